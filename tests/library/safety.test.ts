/** What the shipped trees say where work can hurt someone or break something. Common practice, no source. */
import { describe, expect, it, test } from 'vitest';
import { joinedTo } from '../../src/circuit/nets.ts';
import { TIMING_HAZARD } from '../../src/procedure/cautions.ts';
import { DRIVES } from '../../src/procedure/job.ts';
import { type Hazard, isTask, type Step } from '../../src/procedure/procedure.ts';
import { library, shipped, trees } from './shipped.ts';

const NAMES = trees.map(({ draft }) => draft.procedure);
type Task = Extract<Step, { cautions: unknown }>;

const stepsOf = (name: string) => shipped(name).linked.procedure.steps;
const tasksOf = (name: string) => Object.values(stepsOf(name)).filter(isTask);
const warns = ({ cautions }: Task, hazard: Hazard) =>
  cautions.some(({ hazards }) => hazards.includes(hazard));

/** Where a step leads when it is done. */
function done(step: Task): readonly string[] {
  return step.kind === 'act' ? [step.go] : step.outcomes.map(({ go }) => go);
}
/** The same, and where it leads when it cannot be done. */
function leads(step: Task): readonly string[] {
  return step.cannot === null ? done(step) : [...done(step), step.cannot];
}

/** Trees that can find a wheel or a timing that has moved. */
const MOVED = NAMES.filter((name) =>
  Object.values(stepsOf(name)).some(
    (step) => step.kind === 'conclude' && step.faults.includes('target.displaced'),
  ),
);

describe('cranking', () => {
  test('trees that can find a displaced wheel are three', () => {
    expect(MOVED).toEqual(['hall-no-signal', 'hall-relay-no-signal', 'reluctor-no-signal']);
  });

  it.each(MOVED)(
    'in %s comes after the question whether the timing has moved, on every way',
    (name) => {
      const { steps, start } = shipped(name).linked.procedure;
      const seen = new Set([start]);
      const asked: string[] = [];
      for (const id of seen) {
        const step = steps[id]!;
        if (!isTask(step)) continue;
        expect(step.setup.state, `${id} is reached unasked`).not.toBe('cranking');
        if (warns(step, TIMING_HAZARD)) asked.push(id);
        else for (const next of leads(step)) seen.add(next);
      }
      expect(asked).toEqual(['timing/signs']);
    },
  );

  it.each(MOVED)('in %s is not asked for where nobody can look at the timing', (name) => {
    const steps = stepsOf(name);
    const marks = steps['timing/marks'] as Task;
    expect(marks.setup.state).toBe('key-off');
    const end = steps[marks.cannot!]!;
    expect(end).toMatchObject({ kind: 'conclude' });
    expect(end.kind === 'conclude' && end.repair).toMatch(/do not crank/);
  });

  it.each(NAMES)(
    'in %s serves the next step as well, where nothing is plugged otherwise',
    (name) => {
      const steps = stepsOf(name);
      for (const step of tasksOf(name)) {
        if (step.setup.state !== 'cranking') continue;
        for (const to of done(step)) {
          const next = steps[to]!;
          if (!isTask(next) || JSON.stringify(next.setup) !== JSON.stringify(step.setup)) continue;
          expect(next.say, `${step.id} to ${next.id}`).toMatch(/If the last crank was/);
        }
      }
    },
  );

  it.each(NAMES)('in %s warns of an engine that starts, and of what cranking harms', (name) => {
    for (const step of tasksOf(name).filter(({ setup }) => setup.state === 'cranking'))
      for (const hazard of [
        'engine-start',
        'exhaust-gas',
        'ignition-voltage',
        'raw-fuel',
        'starter-heat',
        'engine-damage',
      ] as const)
        expect(warns(step, hazard), `${step.id}: ${hazard}`).toBe(true);
  });
});

describe('a running engine', () => {
  it.each(NAMES)('in %s is said to carry ignition voltage where hands come near it', (name) => {
    for (const step of tasksOf(name).filter(({ setup }) => setup.state === 'running'))
      expect(warns(step, 'ignition-voltage'), step.id).toBe(true);
  });

  it.each(NAMES)('in %s is not warmed from where a belt or fan reaches', (name) => {
    for (const step of tasksOf(name).filter(({ setup }) => setup.state === 'running'))
      if (/hot air/i.test(step.say)) expect(step.say, step.id).toMatch(/no belt or fan reaches/);
  });
});

describe('a charger', () => {
  it.each(NAMES)('in %s is connected with a word about the gas, before it is', (name) => {
    const connecting = tasksOf(name).filter(({ say }) => /\ba charger\b/i.test(say));
    expect(connecting.map(({ id }) => id)).toEqual(['battery/charger']);
    for (const { cautions } of connecting)
      expect(cautions.map(({ say }) => say).join(' ')).toMatch(/gas .*spark.*charger off while/);
  });
});

describe('a road test', () => {
  it('is a step of its own, with a second person or a recording, and no chocks', () => {
    const step = stepsOf('wheel-speed-current')['drive-first/road'] as Task;
    expect(step.setup.state).toBe('driving');
    expect(step.say).toMatch(/second person.*recording/);
    expect(step.cautions.map(({ id }) => id)).toEqual(['road-test']);
    const said = [step.say, ...step.cautions.map(({ say }) => say)].join(' ');
    expect(said).not.toMatch(/chock/i);
    expect(step.say).toMatch(/brake pedal hold.*bearing.*Drive slowly/);
  });

  it('is asked for only once the code has been named, and never for an electrical one', () => {
    const steps = stepsOf('wheel-speed-current');
    const code = steps['code'] as Extract<Task, { outcomes: unknown }>;
    const reached = (from: string, past: string) => {
      const seen = new Set([from]);
      for (const id of seen) {
        const step = steps[id]!;
        if (id !== past && isTask(step)) for (const next of leads(step)) seen.add(next);
      }
      return [...seen].filter((id) => {
        const step = steps[id]!;
        return isTask(step) && step.setup.state === 'driving';
      });
    };
    expect(reached(shipped('wheel-speed-current').linked.procedure.start, 'code')).toEqual([]);
    const by = Object.fromEntries(code.outcomes.map(({ name, go }) => [name, reached(go, '')]));
    expect(by).toEqual({
      circuit: [],
      range: ['drive-first/road'],
      intermittent: ['drive-wake/road'],
    });
  });

  it.each(NAMES)('in %s nobody is told to drive where the vehicle is chocked', (name) => {
    for (const step of tasksOf(name).filter(({ setup }) => setup.state !== 'driving'))
      expect(step.say, step.id).not.toMatch(/\bdrive (?:slowly|the vehicle)\b/i);
  });
});

describe('a drive', () => {
  it.each(DRIVES)('%s: every step with the key on says what it can do', (drive) => {
    for (const name of NAMES) {
      const { steps } = shipped(name, drive).linked.procedure;
      for (const step of Object.values(steps).filter(isTask)) {
        const isHigh = drive !== 'combustion';
        const atWork = step.setup.state !== 'driving';
        expect(warns(step, 'high-voltage'), step.id).toBe(isHigh && atWork);
        // An engine that turns in such a vehicle turns in READY.
        if (!['key-on', 'cranking', 'running'].includes(step.setup.state)) continue;
        expect(warns(step, 'vehicle-moves'), step.id).toBe(isHigh);
      }
    }
  });
});

test('a caution that is only a NOTICE is about things, and not about people', () => {
  const things = [
    ...['module-damage', 'instrument-damage', 'harness-damage', 'engine-damage', 'starter-heat'],
  ];
  for (const { id, word, hazards } of library.cautions.filter(({ word }) => word === 'NOTICE'))
    expect(
      hazards.filter((one) => !things.includes(one)),
      `${id}: ${word}`,
    ).toEqual([]);
});

describe('what is done by hand', () => {
  const ids = (step: Task) => step.cautions.map(({ id }) => id);

  it.each(NAMES)('in %s warns where it happens', (name) => {
    const { circuit } = shipped(name).model;
    const modules = circuit.parts.filter(({ kind }) => kind === 'module').map((part) => part.name);
    for (const step of tasksOf(name)) {
      const { unplugged, bridges } = step.setup;
      const looksAt = step.kind === 'look' && step.probe.kind === 'inspect' ? step.probe.of : null;
      const isLook = modules.some((part) => looksAt === `connector.${part}`);
      const isOff = isLook || unplugged.some((part) => modules.includes(part));
      expect(ids(step).includes('module-off-by-the-maker'), step.id).toBe(isOff);
      const isWired = bridges.some(({ through }) => through === 'lead');
      expect(ids(step).includes('temporary-wire'), step.id).toBe(isWired);
      if (/\bBack-probe\b/.test(step.say))
        expect(ids(step), step.id).toContain('back-probe-with-care');
    }
  });

  it('at a raised wheel and under the column is said before each step there', () => {
    for (const step of tasksOf('wheel-speed-current'))
      if (step.family === 'wiggle' || (step.kind === 'look' && step.setup.target === 'moving'))
        expect(ids(step), step.id).toContain('raised-wheel');
    for (const step of tasksOf('pedal-position'))
      if (step.family === 'wiggle' || /move the harness/i.test(step.say))
        expect(ids(step), step.id).toContain('airbag-near');
  });

  it.each(NAMES)('in %s an engine turned by hand cannot be started meanwhile', (name) => {
    for (const step of tasksOf(name))
      if (/\bturn(?:ing)? the engine by hand\b/i.test(step.say))
        expect(ids(step), step.id).toContain('turned-by-hand');
  });

  it.each(NAMES)(
    'in %s a neighbour, which may have electronics in it, is off where ohms are read',
    (name) => {
      const { circuit } = shipped(name).model;
      const neighbours = circuit.parts.filter(({ kind }) => kind === 'neighbour');
      for (const step of tasksOf(name)) {
        if (step.kind !== 'measure' || step.probe?.kind !== 'ohms') continue;
        const { setup, probe } = step;
        for (const lead of [probe.plus, probe.minus].filter((one) => !one.startsWith('battery.'))) {
          const metal = joinedTo(circuit, setup, lead);
          for (const one of neighbours)
            expect(
              one.pins.some((pin) => metal.has(`${one.name}.${pin}.pin`)),
              step.id,
            ).toBe(false);
        }
      }
    },
  );

  it('no relay is pulled half-way', () => {
    for (const step of tasksOf('hall-relay-no-signal'))
      expect(step.say, step.id).not.toMatch(/just far enough/);
  });

  it.each(NAMES)('a battery that comes off in %s comes off with care', (name) => {
    const repairs = Object.values(stepsOf(name)).flatMap((step) =>
      step.kind === 'conclude' && /disconnect the battery|battery disconnected/i.test(step.repair)
        ? [step.repair]
        : [],
    );
    expect(repairs.length).toBeGreaterThan(0);
    for (const repair of repairs) expect(repair).toMatch(/ignition off.*radio code/);
  });
});

describe('a new part', () => {
  it.each(NAMES)('in %s is learnt by the maker’s procedure', (name) => {
    const ends = Object.values(stepsOf(name)).filter((step) => step.kind === 'conclude');
    const fitted = ends.filter(({ repair }) =>
      /\breplace (?:the|a) [^.;]*\b(?:sensor|wheel|ring|pedal unit)\b(?!')/i.test(repair),
    );
    const told = fitted.filter(({ repair }) => !/terminal/i.test(repair));
    expect(told.length).toBeGreaterThan(0);
    for (const { id, repair } of told) expect(repair, id).toMatch(/learn/);
  });
});

/** Trees that try a sensor known to be good. */
const TRYING = NAMES.filter((name) => tasksOf(name).some(({ setup }) => setup.sensor === 'spare'));

describe('a good sensor that is tried', () => {
  it('is tried wherever it can be turned', () => {
    expect(TRYING).toEqual([...MOVED, 'wheel-speed-current']);
  });

  it.each(TRYING)('in %s is moved with its harness, and the old one must fail again', (name) => {
    const steps = stepsOf(name);
    const tried = tasksOf(name).filter(({ setup }) => setup.sensor === 'spare');
    for (const step of tried) {
      expect(step.say, step.id).toMatch(/move (?:the )?connector and (?:harness|cable)/);
      // A fault that comes and goes may have gone by itself when the good one was fitted.
      const counts =
        step.kind === 'look' ? step.outcomes.filter(({ name }) => name === 'follows') : [];
      for (const { go } of counts) {
        const end = steps[go]!;
        if (end.kind !== 'conclude' || !end.faults.some((one) => one.startsWith('sensor.')))
          continue;
        if (/replace/i.test(end.repair)) expect(end.repair, end.id).toMatch(/old one .*once more/);
      }
    }
  });
});
