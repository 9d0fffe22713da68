/** Small good files, each with one line whose text a hostile case replaces. */
import type { YamlKind } from './readers.ts';

export interface GoodFile {
  readonly lines: readonly string[];
  /** Number of the line that holds a free text, its indent and its key. */
  readonly line: number;
  readonly indent: string;
  readonly key: string;
  /** A key that must be there at the top, for the case that lacks it. */
  readonly needed: string;
}

const CIRCUIT = `circuit: small
notes: a text
title: A small circuit
parts:
  module:
    kind: module
    words: control module
    pins:
      reference:
        reference: { volts: 5 V +/- 2 %, series: 0.5 ohm, limit: 80 mA +/- 20 % }
      signal:
        pull: { to: reference, ohms: 2.2 kohm +/- 5 % }
        input: { low-below: 1.5 V, high-above: 3.5 V }
      ground:
        ground: { ohms: 20 mohm }
  sensor:
    kind: hall-switch
    words: position sensor
    draws: 8 mA +/- 40 %
    minimum: 3.8 V
    on: 50 ohm +/- 50 %
wires:
  feed: { from: module.reference, to: sensor.feed, size: 0.5 mm2, length: 3 m }
  signal: { from: module.signal, to: sensor.signal, size: 0.5 mm2, length: 3 m }
  ground: { from: module.ground, to: sensor.ground, size: 0.5 mm2, length: 3 m }
target: { at: crankshaft, teeth: 60, missing: 2, on: 0.5 }`;

const PROCEDURE = `procedure: small
about: a text
title: A small tree
start: feed
steps:
  feed:
    title: Feed
    test: reference
    state: key-on
    say: Red lead on the feed.
    minutes: 1
    measure: { volts: [sensor.feed, battery.negative] }
    outcomes:
      low: { below: 4.75 V, go: broken }
      good: { from: 4.75 V, go: fine }
  broken:
    title: Broken
    conclude: [wire.feed.open]
    say: It is broken.
    repair: Mend it.
  fine:
    title: Fine
    conclude: []
    say: All is well.
    repair: Nothing.`;

const JOB = `complaint: stalls when warm
notes: a text
codes: [P0335]
vehicle: { words: Marrow Dray, drive: combustion }
terminals:
  sensor.feed: { pin: 1, colour: RD/BU }`;

const CAUTIONS = `cautions:
  live:
    word: CAUTION
    hazards: [energised-circuit]
    states: [key-on]
    say: a text that is shown`;

const ANSWERS = `procedure: small
answers:
  - step: feed
    note: a text
  - acknowledge: true
  - reading: 4.98 V
  - conclude: true`;

function good(text: string, line: number, needed: string): GoodFile {
  const lines = text.split('\n');
  const match = /^( *)([a-z]+): a text/.exec(lines[line - 1]!);
  if (!match) throw new Error(`no text in line ${line}`);
  return { lines, line, indent: match[1]!, key: match[2]!, needed };
}

export const GOOD: Readonly<Record<YamlKind, GoodFile>> = {
  circuit: good(CIRCUIT, 2, 'circuit'),
  procedure: good(PROCEDURE, 2, 'procedure'),
  job: good(JOB, 2, 'complaint'),
  cautions: good(CAUTIONS, 6, 'cautions'),
  answers: good(ANSWERS, 4, 'answers'),
};
