/** Working files to begin with: each passes `check`, and its comments say what to change. */

/** Makes the text of a working file to start from, with the name filled in. */
export type Starter = (name: string) => string;

const SCHEMA = (kind: string) => `# yaml-language-server: $schema=${kind}.schema.json
# With the line above an editor explains every key. Where the file moves, point it to docs/schema/${kind}.schema.json of ohmward.
`;

export const STARTERS: Readonly<Record<'procedure' | 'circuit' | 'job', Starter>> = {
  procedure: (name) => `${SCHEMA('procedure')}procedure: ${name}
title: Three-wire Hall sensor, no signal
about: Say here what it is for and what to have ready.
# The circuit makes the expected values and the proof. See its terminals and faults with: ohmward predict CIRCUIT --table
circuit: hall-module-fed
codes: [P0335]
start: picture
steps:
  # A step says how the vehicle stands, what to do, why, what is read, and where each outcome leads.
  picture:
    title: What does the module see?
    test: pattern
    state: cranking
    # Plugs, bridges and leads are said by the program; this is what else a person must know.
    say: Crank for three seconds.
    why: A good signal at the module's own terminal leaves the module and the position of the wheel.
    measure: { pattern: [module.signal, battery.negative] }
    minutes: 4
    outcomes:
      full: { words: toggles fully and evenly, go: counts }
      other: { looks: [weak, uneven, flat-high, flat-middle, flat-low], words: anything else, go: before-the-module }
    # Where to go when this step cannot be done here: to another test, or to an end that leaves open what it would tell.
    cannot: not-told
  counts:
    title: Does the module count?
    test: pattern
    state: cranking
    say: Choose the engine speed in it while cranking.
    why: A good signal that is not counted means the module.
    measure: { counts: module.signal }
    minutes: 2
    outcomes:
      follows: { words: the speed is shown, go: position }
      still: { words: the speed stays at zero, go: module-side }
  position:
    title: Position beside a known-good signal
    test: comparison
    state: cranking
    say: Second channel on the sister sensor. Compare where the gap stands.
    why: A good signal in the wrong place is a wheel that has slipped.
    measure: { timing: [module.signal, battery.negative] }
    minutes: 5
    outcomes:
      in-step: { words: in step, go: feed }
      shifted: { looks: [shifted, no-signal], words: shifted, go: before-the-module }
  feed:
    title: Feed at the sensor
    test: reference
    state: key-on
    say: Back-probe the sensor.
    why: Too high or too low a feed may still give a signal just now.
    measure: { volts: [sensor.feed, battery.negative] }
    # The limits of good, low and high come from the circuit.
    expect: computed
    minutes: 2
    outcomes:
      low: { words: too low, go: before-the-module }
      good: { words: as it should be, go: no-fault }
      high: { words: too high, go: before-the-module }
  # A conclusion names the faults it stands for (* stands for anything) and what puts them right.
  # This one is far too wide. Part it with more steps, and let "ohmward check FILE --table" show what goes where.
  before-the-module:
    title: Sensor, wires, contacts, feed or wheel
    conclude: [sensor.*, wire.*, contact.*, module.*, target.*, throttle-position.*]
    say: Something before the module's input is not as it should be.
    repair: Test feed and ground at the sensor, then the pull-up at its plug, then each wire from end to end.
    retest: [picture, position, feed]
  module-side:
    title: The module does not count
    conclude: [module.*, contact.module.*]
    say: A good signal arrives at the module's terminal and is not counted.
    repair: Check the fit of the module's terminals. If they are sound, repair the module by its maker's procedure.
    retest: [counts]
  # One conclusion must be for a circuit in which nothing was found.
  no-fault:
    title: No fault found now
    conclude: []
    say: Everything that was measured is right now.
    repair: Nothing to repair yet. Wiggle the harness while watching the signal.
  # And one for what could not be tested: it names every fault, and so claims none.
  not-told:
    title: Left open, since there was no scope
    conclude: ["*"]
    say: Without the signal at the module nothing is told.
    repair: Nothing to repair yet. Get a scope and look at the signal.
    retest: [picture]
`,
  circuit: (name) => `${SCHEMA('circuit')}circuit: ${name}
title: Three-wire Hall switch with a 5 V feed from its module
# Values with their tolerance, from the maker's data: 5 V +/- 2 %, 4.9 V .. 5.1 V.
parts:
  module:
    kind: module
    words: control module
    pins:
      reference:
        reference: { volts: 5 V +/- 2 %, series: 0.5 ohm, limit: 80 mA +/- 20 % }
      signal:
        pull: { to: reference, ohms: 2.2 kohm +/- 5 % }
        # What the module takes for low and for high.
        input: { low-below: 1.5 V, high-above: 3.5 V }
      ground:
        ground: { ohms: 20 mohm }
  sensor:
    # hall-switch, reluctor, potentiometer or current-switch
    kind: hall-switch
    words: position sensor
    draws: 8 mA +/- 40 %
    minimum: 3.8 V
    on: 50 ohm +/- 50 %
# Every wire with its two terminals, size and length. All faults follow from this by rule.
wires:
  feed: { from: module.reference, to: sensor.feed, size: 0.5 mm2, length: 3 m }
  signal: { from: module.signal, to: sensor.signal, size: 0.5 mm2, length: 3 m }
  ground: { from: module.ground, to: sensor.ground, size: 0.5 mm2, length: 3 m }
# What moves past the sensor; turns: 0 for something that the engine does not turn.
target: { at: crankshaft, teeth: 60, missing: 2, on: 0.5 }
`,
  job: (name) => `${SCHEMA('job')}job: ${name}
complaint: Say here what the customer says, and when it happens.
# Everything below may be left out.
procedure: hall-no-signal
# Each with how the module keeps it, where that is known: stored, pending or history.
codes: [P0335 stored]
vehicle:
  words: green delivery van
  odometer: 120000 km
  # combustion, hybrid, electric or not-stated: all but the first bring the high-voltage cautions
  drive: combustion
# Work done before counts against what was replaced: fitted is new, second-hand or other-make, changed is nothing,
# for-a-while or cured.
earlier-repairs:
  - { words: cleaned the battery terminals }
  - { words: replaced last week, part: sensor, fitted: new, changed: nothing }
# What is told and seen before anything is touched; each moves chances, but for the freeze frame.
circumstances:
  happens: [cold, wet]
  fails-with-it: nothing
  recent-work: timing belt
  seen: green pins in the plug
  freeze-frame: [812 rpm, coolant 91 C]
# Pins and wire colours of this vehicle, by terminal of the circuit. Colours in the letters of IEC 60757: RD/BU is red with blue.
terminals:
  sensor.feed: { pin: 1, colour: RD/BU }
  sensor.signal: { pin: 2, colour: GN }
  sensor.ground: { pin: 3, colour: BN }
`,
};
