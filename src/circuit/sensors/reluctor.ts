/** A coil before a wheel: its voltage, by what moves the target, behind its resistance. */
import type { ReluctorPart } from '../circuit.ts';
import { ONE_SIZE, partFault, RESISTIVE_OHMS, theWords } from '../part-faults.ts';
import type { Adding, OwnTest, SensorKind } from '../sensor-kind.ts';
import type { Lead } from '../test-list.ts';

/** Share of turns left of a coil with shorted turns; resistance and voltage fall alike. */
const TURNS_LEFT = { low: 0.05, high: 0.95 };

export const reluctor: SensorKind<ReluctorPart> = {
  pins: ['plus', 'minus'],
  values: {
    ohms: { said: 'coil resistance', unit: 'ohm', usual: '190 ohm to 2.5 kohm' },
    cranking: { said: 'peak voltage while cranking', unit: 'V', usual: '1 V +/- 40 %' },
    running: { said: 'peak voltage at idle', unit: 'V', usual: '4 V +/- 40 %' },
    byHand: {
      said: 'peak voltage when moved by hand',
      unit: 'V',
      usual: '0.8 V +/- 30 %',
      key: 'by-hand',
    },
  },
  hasElectronics: false,
  isSwitched: false,
  faults: (part) => {
    const make = partFault(part);
    const the = theWords(part);
    return [
      make('coil-open', 'sensor', 1.5, `the coil of ${the} is broken`, 'coil-open'),
      make(
        'shorted-turns',
        'sensor',
        1,
        `the coil of ${the} has shorted turns`,
        'shorted-turns',
        '',
        TURNS_LEFT,
      ),
      make(
        'coil-resistive',
        'sensor',
        0.5,
        `the coil of ${the} has a bad joint inside`,
        'coil-resistive',
        '',
        RESISTIVE_OHMS,
      ),
      make(
        'leads-swapped',
        'connector',
        0.5,
        `the two wires of ${the} are swapped`,
        'leads-swapped',
        '',
        ONE_SIZE,
        {
          repair: 'leads.swap',
          repairWords: `Swap the two wires of ${the} back.`,
          subject: [part.name, `connector.${part.name}`],
          visibleChance: 0.6,
        },
      ),
    ];
  },
  add: addReluctor,
  tests: ({ name }, { leads, module }) => coilOhms(name, leads, module),
  // What a bias sends through it.
  amps: () => 0.001,
};

/** A coil: its voltage, by what moves the target, behind its resistance. */
function addReluctor({
  sensor,
  plan,
  setup,
  own,
  pin,
  reader,
  warmth,
}: Adding<ReluctorPart>): void {
  const { state, target } = setup;
  if (own?.mode === 'coil-open') return;
  const swapped = own?.mode === 'leads-swapped';
  const plus = pin(swapped ? 'minus' : 'plus');
  const minus = pin(swapped ? 'plus' : 'minus');
  const speed = state === 'cranking' || state === 'running' ? state : 'byHand';
  const coil = reader('ohms', sensor.ohms);
  const volts = reader(speed, sensor[speed]);
  plan.makers.push((draw) => {
    const turns = own?.mode === 'shorted-turns' ? draw.size(own.size) : 1;
    const joint = own?.mode === 'coil-resistive' ? draw.size(own.size) : 0;
    const ohms = coil(draw) * warmth(draw) * turns + joint;
    const peak = target === 'still' ? 0 : volts(draw) * turns;
    return { kind: 'emf', plus, minus, volts: draw.swing * peak, ohms };
  });
}

function coilOhms(sensor: string, [first, second]: readonly Lead[], module: string): OwnTest[] {
  const common = { minutes: 2, needs: ['meter'] } as const;
  return [
    {
      ...common,
      id: 'sensor.coil-ohms',
      words: "Ohms of the coil at the sensor's own pins",
      probe: { kind: 'ohms', plus: `${sensor}.plus.pin`, minus: `${sensor}.minus.pin` },
      setup: { state: 'key-off', unplugged: [sensor] },
    },
    ...(first && second
      ? [
          {
            ...common,
            id: 'module.loop-ohms',
            words: "Ohms of coil and wires from the module's connector, module unplugged",
            probe: { kind: 'ohms', plus: first.there, minus: second.there } as const,
            setup: { state: 'key-off', unplugged: [module] } as const,
          },
        ]
      : []),
  ];
}
