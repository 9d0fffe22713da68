/** Every sentence of a session names the sensor that its job is about: by what the sheet says, or by the code. */
import { describe, expect, it } from 'vitest';
import { describeCode } from '../../src/identify/describe-code.ts';
import { emptyJob, type Job } from '../../src/procedure/job.ts';
import { atPlaceOf, placeProblem } from '../../src/procedure/place-sensor.ts';
import { shipped, trees } from './shipped.ts';

const job = (codes: readonly string[], position?: string): Job => ({
  ...emptyJob('no signal'),
  codes,
  ...(position !== undefined && { position }),
});
const placed = (tree: string, of: Job) => {
  const { linked, model } = shipped(tree);
  return atPlaceOf(of, { circuit: model.circuit, procedure: linked.procedure });
};
/** All texts, without the codes and the names that only the program reads. */
const textsOf = (value: unknown): string =>
  JSON.stringify(value, (key, one) => (key === 'codes' || key === 'about' ? undefined : one));

describe('the code says which sensor it is', () => {
  it.each([
    ['hall-no-signal', 'P0335', 'crankshaft position sensor', "the camshaft sensor's signal"],
    [
      'hall-no-signal',
      'P0345',
      'bank 2 camshaft A position sensor',
      "the crankshaft sensor's signal",
    ],
    [
      'hall-no-signal',
      'P0393',
      'bank 2 camshaft B position sensor',
      "the crankshaft sensor's signal",
    ],
    ['hall-no-signal', 'P0387', 'crankshaft B position sensor', "the camshaft sensor's signal"],
    [
      'hall-relay-no-signal',
      'P0366',
      'bank 1 camshaft B position sensor',
      "the crankshaft sensor's signal",
    ],
    ['hall-relay-no-signal', 'P0335', 'crankshaft position sensor', "the camshaft sensor's signal"],
    [
      'reluctor-no-signal',
      'P0340',
      'bank 1 camshaft A position sensor',
      "the crankshaft sensor's signal",
    ],
    ['wheel-speed-current', 'C0031', 'left front wheel speed sensor', 'right front wheel'],
    ['wheel-speed-current', 'C0034', 'right front wheel speed sensor', 'left front wheel'],
    ['wheel-speed-current', 'C0037', 'left rear wheel speed sensor', 'right rear wheel'],
    ['wheel-speed-current', 'C003A', 'right rear wheel speed sensor', 'left rear wheel'],
    ['wheel-speed-current', 'C0050', 'right rear wheel speed sensor', 'left rear wheel'],
  ])('%s, %s: %s beside %s', (tree, code, sensor, sister) => {
    const { circuit, procedure } = placed(tree, job([code]));
    expect(circuit.parts.find(({ name }) => name === 'sensor')?.words).toBe(sensor);
    const texts = textsOf(procedure);
    expect(texts).toContain(sister);
    const wheels = new Set(
      textsOf({ circuit, procedure }).match(/(?:left|right) (?:front|rear) wheel/g),
    );
    const own = sensor.replace(' speed sensor', '');
    if (tree === 'wheel-speed-current') expect(wheels).toEqual(new Set([own, sister]));
  });

  it.each(['C0037', 'C003A'])('%s: nothing at a rear wheel turns with the steering', (code) => {
    const { procedure } = placed('wheel-speed-current', job([code]));
    const ends = Object.values(procedure.steps).filter(({ kind }) => kind === 'conclude');
    for (const end of ends) expect(textsOf(end), end.id).not.toMatch(/steer|full lock/i);
  });

  it('in every tree, for every code that it lists', () => {
    for (const { draft } of trees)
      for (const code of draft.codes ?? []) {
        const found = describeCode(code)!;
        if (!['crankshaft', 'camshaft', 'wheel'].includes(found.sensorRole ?? '')) continue;
        const { circuit } = placed(draft.procedure, job([code]));
        const words = circuit.parts.find(({ name }) => name === 'sensor')!.words;
        expect(words, code).toContain(
          found.sensorRole === 'wheel' ? found.which : found.sensorRole,
        );
      }
  });

  it('a code that compares two signals, or is of another sensor, says nothing', () => {
    const { linked, model } = shipped('hall-no-signal');
    for (const codes of [[], ['P0016'], ['C0037'], ['P1340']]) {
      const found = placed('hall-no-signal', job(codes));
      expect(found.circuit).toBe(model.circuit);
      expect(found.procedure).toBe(linked.procedure);
    }
    expect(placed('hall-no-signal', job(['P0016', 'P0340'])).circuit.target?.at).toBe(
      'bank 1 camshaft A',
    );
  });
});

describe('what is chosen in the live data', () => {
  it('is not the engine speed for a camshaft, which goes on without its signal', () => {
    const words = textsOf(placed('hall-no-signal', job(['P0344'], 'intake camshaft')));
    expect(words).not.toContain('Choose the engine speed');
    expect(words).toContain('Choose the intake camshaft position or its synchronisation in it.');
  });

  it('is the engine speed for a crankshaft', () => {
    const words = textsOf(placed('hall-relay-no-signal', job(['P0335'])));
    expect(words).toContain('Choose the engine speed in it.');
    expect(words).not.toContain('synchronisation in it');
  });
});

describe('the job sheet says it better', () => {
  it('an exhaust camshaft, whatever the code', () => {
    const { circuit, procedure } = placed(
      'hall-no-signal',
      job(['P0340'], 'exhaust camshaft bank 2'),
    );
    expect(textsOf({ circuit, procedure })).toContain('bank 2 exhaust camshaft sensor');
    expect(circuit.target).toMatchObject({
      at: 'bank 2 exhaust camshaft',
      turns: 0.5,
      teeth: null,
    });
  });

  it('an inlet camshaft is an intake', () => {
    const { circuit } = placed('hall-no-signal', job(['P0340'], 'inlet camshaft'));
    expect(circuit.target?.at).toBe('intake camshaft');
  });

  it('a wheel whose number means two', () => {
    const { circuit } = placed('wheel-speed-current', job(['C0035'], 'left front wheel'));
    expect(circuit.target?.at).toBe('left front wheel');
  });

  it.each([
    [
      'hall-no-signal',
      'left rear wheel',
      '"left rear wheel" is not a shaft where the sensor of this procedure could be; for example: crankshaft, intake camshaft, exhaust camshaft bank 2',
    ],
    [
      'wheel-speed-current',
      'crankshaft',
      '"crankshaft" is not a wheel where the sensor of this procedure could be; for example: left front wheel, right rear wheel',
    ],
    ['throttle-position', 'crankshaft', 'the sensor of this procedure has only one position'],
    ['hall-no-signal', 'intake camshaft', null],
  ])('%s with "%s"', (tree, position, problem) => {
    expect(placeProblem(job([], position), shipped(tree).model.circuit)).toBe(problem);
  });
});
