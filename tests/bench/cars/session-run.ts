/** One session on one car: what is asked is measured at the car and told to the program, until it has concluded. */
import { unitShownBy } from '../../../src/circuit/shown-by.ts';
import type { Setup, Test } from '../../../src/circuit/test.ts';
import { type Client, isRefused, type State, type StepSeen } from './client.ts';
import type { Means } from './means.ts';
import type { Asked, Person, SaidAnswer } from './person.ts';
import {
  faultsIn,
  fullVoltsIn,
  isMisfit,
  plainOf,
  proposalsIn,
  rowsIn,
  stateIn,
  testOf,
  textOf,
} from './replies.ts';
import type { Vehicle } from './vehicle.ts';
import type { World } from './world.ts';

/** What the program held for likeliest at some point. */
export interface Stated {
  /** Readings so far; the last is at the end. */
  readonly after: number;
  readonly repair: string;
  readonly chance: number;
}

export interface SessionEnd {
  /** Faults of the conclusion; null where the session did not end. */
  readonly faults: readonly string[] | null;
  /** Repairs of a group that was named in free order; null where the faults say it. */
  readonly group: readonly string[] | null;
  readonly proven: boolean;
  /** The same before the tests that were offered. */
  readonly provenBefore: boolean;
  readonly misfit: boolean;
  readonly minutes: number;
  readonly tests: number;
  readonly stated: readonly Stated[];
  /** Slips that stand in the record, and all that were made. */
  readonly slips: number;
  readonly slipsMade: number;
  /** Chance by repair at the end. */
  readonly chances: Readonly<Record<string, number>>;
  readonly why: string;
}

export interface RunAsk {
  readonly client: Client;
  readonly vehicle: Vehicle;
  readonly person: Person;
  readonly world: World;
  readonly means: Means;
}

const PERSON = 'R. Example';
const STEPS_MAX = 80;
const TESTS_MAX = 25;
const OFFERED_MAX = 5;
const FIRST_MAX = 12;
/** Tests that cannot be done here are set aside, as many as are proposed. */
const ASIDE_MAX = 80;
/** Chances are kept after so many readings. */
const STATED_AFTER = [2, 4, 6];
/** Where the AC volts of a coil are taken, for a step that names its leads in words only. */
const COIL_ENDS = ['module.signal-plus', 'module.signal-minus'] as const;

export class SessionRun {
  private readonly ask: RunAsk;
  private readonly stated: Stated[] = [];
  /** Every test that was made with an instrument. */
  readonly made: Test[] = [];
  private tests = 0;
  private slips = 0;
  private slipsMade = 0;
  /** Place in the path of the first slip that stands in a step of the tree. */
  private slippedAt: number | null = null;
  private misfit = false;
  private isUnreachedSaid = false;

  constructor(ask: RunAsk) {
    this.ask = ask;
  }

  /**
   * Takes the step with the slip back, reads it rightly this time, and goes on to the end; null where no step of the tree
   * has one.
   */
  async oneStepBack(): Promise<SessionEnd | null> {
    const to = this.slippedAt;
    if (to === null) return null;
    this.ask.person.steady();
    const taken = await this.ask.client.tried('back', { to });
    return isRefused(taken) ? null : this.tree();
  }

  /** Follows the tree to its end, makes the tests that would prove it, and accepts. */
  async tree(): Promise<SessionEnd> {
    const { client } = this.ask;
    await client.call('instruments', { instruments: this.ask.means.instruments });
    let state = stateIn(await client.call('state'));
    for (let count = 0; count < STEPS_MAX; count += 1) {
      const { step } = state;
      if (!step) break;
      const { first = null, end: words = null } = state.diagnosis?.asleep ?? {};
      if (words !== null && step.kind !== 'conclude') {
        await this.keep('end');
        const done = stateIn(await client.call('conclude', { words, sure: true }));
        return this.end(done, { faults: [], why: 'nothing found' });
      }
      if (first && step.kind !== 'conclude' && this.ask.means.cannot(first.test) === null) {
        await this.makeTest(first.test);
        state = stateIn(await client.call('state'));
        continue;
      }
      if (step.kind === 'conclude') {
        const provenBefore = (await client.call('weigh'))['proven'] === true;
        await this.makeOffered();
        const now = stateIn(await client.call('state'));
        // What was offered may have opened the question again.
        if (now.step?.kind !== 'conclude') {
          state = now;
          continue;
        }
        const told = await this.makeFirst(now.step);
        if (told.overturned) {
          state = stateIn(await client.call('back', { to: told.overturned.place }));
          continue;
        }
        if (told.instead) {
          await this.makeOffered(told.instead.faults);
          // Those tests may speak for another again.
          const after = stateIn(await client.call('state'));
          if (faultsInstead(after.step) !== faultsInstead(told)) {
            state = after;
            continue;
          }
        }
        await this.keep('end');
        const faults = told.instead?.faults ?? told.faults ?? [];
        const done = stateIn(
          told.instead
            ? await client.call('conclude', {
                ...(faults.length > 0 ? { faults } : { words: told.instead.words }),
                sure: true,
              })
            : await client.call('accept', { sure: true }),
        );
        const why = told.instead ? `${step.id}, readings otherwise` : step.id;
        // What the readings leave of the tree's conclusion is what the papers name.
        return this.end(done, { faults: done.concluded?.faults ?? faults, provenBefore, why });
      }
      const next = await this.doStep(step, state);
      if (next === null) return this.end(state, { faults: null, why: `stuck at ${step.id}` });
      state = next;
    }
    return this.end(state, { faults: null, why: 'no end' });
  }

  /** Makes what is proposed first, again and again. */
  async free(): Promise<SessionEnd> {
    const { client, means } = this.ask;
    await client.call('instruments', { instruments: means.instruments });
    let why = 'tests';
    while (this.tests < TESTS_MAX) {
      const proposals = proposalsIn(await client.call('next'), 'proposals');
      const best = proposals.find(({ test }) => means.cannot(test) === null);
      if (!best && proposals.length > 0 && (await this.sayUnreached())) continue;
      if (!best) {
        why = proposals.length === 0 ? 'nothing proposed' : 'out of reach';
        break;
      }
      await this.makeTest(best.test);
      if (await this.isProven()) {
        why = 'proven';
        break;
      }
    }
    await this.keep('end');
    return this.takeLeader(why);
  }

  private async takeLeader(why: string): Promise<SessionEnd> {
    const { client } = this.ask;
    const found = await client.call('suspects');
    const rows = rowsIn(found);
    const alike: { readonly repairs: readonly string[] } = Object(found['alike']);
    const [leader] = rows;
    const faults = leader ? faultsIn(leader) : [];
    const weighed = faults.length > 0 ? await client.call('weigh', { faults }) : null;
    const state = stateIn(await client.call('state'));
    const group = alike.repairs.length > 0 ? alike.repairs : null;
    return this.end(state, { faults, group, proven: weighed?.['proven'] === true, why });
  }

  private async isProven(): Promise<boolean> {
    const { client } = this.ask;
    const [leader] = rowsIn(await client.call('suspects'));
    const faults = leader ? faultsIn(leader) : [];
    if (faults.length === 0) return false;
    return (await client.call('weigh', { faults }))['proven'] === true;
  }

  private async end(
    state: State,
    told: Pick<SessionEnd, 'faults' | 'why'> & Partial<SessionEnd>,
  ): Promise<SessionEnd> {
    const rows = rowsIn(await this.ask.client.call('suspects'));
    return {
      group: null,
      proven: state.concluded?.proven ?? false,
      provenBefore: false,
      misfit: this.misfit,
      minutes: state.minutes,
      tests: this.tests,
      stated: this.stated,
      slips: this.slips,
      slipsMade: this.slipsMade,
      chances: Object.fromEntries(rows.map(({ repair, chance }) => [repair, chance])),
      ...told,
    };
  }

  /** Null where a step can neither be done nor gone round. */
  private async doStep(step: StepSeen, state: State): Promise<State | null> {
    const { client, means, world } = this.ask;
    const test = testOf(step);
    const reason = test ? means.cannot(test) : null;
    if (reason !== null && step.cannot) {
      // The program goes round the step then, and round all others that need that connector.
      const now = await this.sayUnreached();
      if (now && now.step?.id !== step.id) return now;
      return stateIn(await client.call('cannot', { reason }));
    }
    await this.acknowledge(state.cautions, {});
    if (step.kind === 'act') return stateIn(await client.call('done'));
    if (step.kind === 'ask') {
      const outcomes = step.outcomes?.map(({ name }) => name) ?? [];
      const choose = world.answer({ title: step.title, outcomes });
      return stateIn(await client.call('choose', { choose }));
    }
    const setup = step.test?.setup;
    if (!test && !setup) return null;
    const before = this.slips;
    const next = await this.say(
      async (again) =>
        test
          ? this.look({ test, fullVolts: fullVoltsIn(step.scope) }, again)
          : this.read(step, setup, again),
      step.kind === 'measure' ? 'reading' : 'choose',
      {},
    );
    if (this.slips > before) this.slippedAt ??= state.path.length - 1;
    await this.keep('step');
    return next;
  }

  /** Says once that a connector is out of reach; null where it was said, or all can be reached. */
  private async sayUnreached(): Promise<State | null> {
    const { client, means } = this.ask;
    if (means.outOfReach === null || this.isUnreachedSaid) return null;
    this.isUnreachedSaid = true;
    const said = await client.tried('aside', { connector: means.outOfReach });
    return isRefused(said) ? null : stateIn(said);
  }

  /** Makes what would prove the conclusion, or one of the person's own. */
  private async makeOffered(own?: readonly string[]): Promise<void> {
    const { client, means } = this.ask;
    for (let made = 0; made < OFFERED_MAX; made += 1) {
      const weighed = await client.tried('weigh', own ? { faults: own } : {});
      if (isRefused(weighed)) return;
      if (weighed['proven'] === true) return;
      const offered = proposalsIn(weighed, 'wouldProve');
      const best = offered.find(({ test }) => means.cannot(test) === null);
      if (!best) return;
      await this.makeTest(best.test);
    }
  }

  /** What the program wants before a conclusion; the conclusion as it then stands. */
  private async makeFirst(step: StepSeen): Promise<StepSeen> {
    const { client, means } = this.ask;
    let now = step;
    let left = FIRST_MAX;
    for (let count = 0; left > 0 && count < ASIDE_MAX; count += 1) {
      const test = now.first?.test;
      if (now.overturned || !test) break;
      if (means.cannot(test) === null) {
        await this.makeTest(test);
        left -= 1;
      } else if (!(await this.sayUnreached()) && isRefused(await client.tried('aside', { test })))
        break;
      const next = stateIn(await client.call('state')).step;
      if (next?.kind !== 'conclude') break;
      now = next;
    }
    return now;
  }

  private async makeTest(test: Test): Promise<void> {
    const { client } = this.ask;
    const prepared = await client.call('prepare', { test });
    const cautions: readonly { readonly id: string }[] = Object(prepared['cautions']);
    await this.acknowledge(cautions, { test });
    const as = unitShownBy(test.probe) === null ? 'choose' : 'reading';
    const asked = { test, fullVolts: fullVoltsIn(prepared['scope']) };
    await this.say((again) => this.look(asked, again), as, { test });
    await this.keep('test');
  }

  /** Each caution by itself, with the name of who has read it. */
  private async acknowledge(
    cautions: readonly { readonly id: string }[],
    of: object,
  ): Promise<void> {
    for (const { id } of cautions)
      await this.ask.client.call('acknowledge', { caution: id, person: PERSON, ...of });
  }

  /** Tells an answer; what the program doubts is looked at again, and then it is sure. */
  private async say(
    look: (again: boolean) => Promise<SaidAnswer>,
    as: 'reading' | 'choose',
    of: { readonly test?: Test },
  ): Promise<State> {
    const { client } = this.ask;
    const method = of.test ? 'test' : as;
    let answer = await look(false);
    let reply = await client.tried(method, { ...of, [as]: textOf(answer.said) });
    if (answer.slipped) this.slipsMade += 1;
    if (isRefused(reply)) {
      if (answer.slipped) answer = await look(true);
      // Asked which of m and M it was, the person says it without either.
      const text = reply.code === 'ambiguous-reading' ? plainOf(answer.said) : textOf(answer.said);
      reply = await client.call(method, {
        ...of,
        [as]: text,
        ...(as === 'reading' ? { sure: true } : {}),
      });
    }
    this.tests += 1;
    if (answer.slipped) this.slips += 1;
    return stateIn(reply);
  }

  private async look(asked: Asked, again: boolean): Promise<SaidAnswer> {
    const { test } = asked;
    const { world, person, vehicle } = this.ask;
    if (test.probe.kind === 'inspect') return person.sees(world.inspect(test.probe.of), again);
    this.made.push(test);
    return person.does(vehicle, asked, world.isPresent(test.wiggle === true), again);
  }

  /** A number whose leads stand in words: the AC volts of a coil, or else the battery. */
  private async read(
    step: StepSeen,
    setup: Setup | undefined,
    again: boolean,
  ): Promise<SaidAnswer> {
    const { world, person, vehicle } = this.ask;
    if (!setup) throw new Error(`cars: the step ${step.id} says nothing of the vehicle`);
    if (step.test?.level !== 'ac')
      return this.look(
        {
          test: {
            setup,
            probe: { kind: 'volts', plus: 'battery.positive', minus: 'battery.negative' },
          },
          fullVolts: null,
        },
        again,
      );
    const volts = await vehicle.acVolts(setup, COIL_ENDS[0], COIL_ENDS[1], world.isPresent(false));
    return { said: person.read(volts, 'V'), slipped: false };
  }

  private async keep(at: 'step' | 'test' | 'end'): Promise<void> {
    const { diagnosis } = stateIn(await this.ask.client.call('state'));
    if (!diagnosis) return;
    if (at === 'end') this.misfit = isMisfit(diagnosis.misfit, diagnosis.explained);
    if (at !== 'end' && !STATED_AFTER.includes(this.tests)) return;
    const [leader] = diagnosis.leading;
    if (!leader) return;
    const after = at === 'end' ? 0 : this.tests;
    this.stated.push({ after, repair: leader.repair, chance: leader.chance });
  }
}

/** What a conclusion is replaced by, as one text. */
function faultsInstead(step: StepSeen | null): string {
  return step?.kind === 'conclude' ? [...(step.instead?.faults ?? [])].sort().join() : '';
}
