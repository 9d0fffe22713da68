/** What the screens are given, from the desk. */

import { basename } from 'node:path';
import { type Circuit, sensorOf } from '../../circuit/circuit.ts';
import { listSessions, newestSessions } from '../../files/list-sessions.ts';
import { replaceablesOf } from '../../procedure/read-repair.ts';
import { harnessTerminals } from '../../procedure/read-terminal.ts';
import { listWords } from '../../records/list-words.ts';
import { isProblem, type Problem } from '../../source/problem.ts';
import type { AppServices, DemoJob, OpenedSession, ProcedureEntry } from '../../ui/app-services.ts';
import { drillMenuExtra } from '../drill/drill-services.ts';
import { type Desk, findSubject, freeOrders, type SessionSubject, startable } from './open-desk.ts';
import { beginSession, continueSession } from './open-session.ts';

/** `onOpened` is told of each session that is opened from the screens, `onDrill` of each drill. */
export function servicesOf(
  desk: Desk,
  onOpened: (opened: OpenedSession) => void,
  onDrill: (opened: OpenedSession) => void,
): AppServices {
  const { library } = desk;
  const subjectOf = (file: string): SessionSubject | Problem => {
    const procedure = startable(desk).find(({ source }) => source.file === file);
    return procedure ? { kind: 'procedure', procedure } : findSubject(desk, file);
  };
  const circuitOf = (file: string) => {
    const subject = subjectOf(file);
    if (isProblem(subject)) return null;
    return subject.kind === 'free-order'
      ? subject.circuit
      : (library.circuits.get(subject.procedure.draft.circuit ?? '') ?? null);
  };
  const told = (opened: OpenedSession | Problem) => {
    if (!isProblem(opened)) onOpened(opened);
    return opened;
  };
  return {
    listProcedures: () => procedureEntries(desk),
    listDemoJobs: () => demoJobs(desk, circuitOf),
    listSessions: () =>
      listSessions(desk.sessions()).sessions.map(
        ({ read }) =>
          () =>
            listWords(read()),
      ),
    newestSessions: () => {
      const { sessions, count } = newestSessions(desk.sessions());
      return { sessions: sessions.map(listWords), count };
    },
    terminalsOf: (file) => {
      const circuit = circuitOf(file);
      return circuit ? harnessTerminals(circuit) : [];
    },
    replaceablesOf: (file) => {
      const circuit = circuitOf(file);
      return circuit ? replaceablesOf(circuit) : [];
    },
    circuitOf,
    benchFaults: (file) => [
      { id: 'healthy', words: 'no fault at all' },
      ...(circuitOf(file)?.faults ?? []).map(({ id, words }) => ({ id, words })),
    ],
    open: async ({ procedureFile, job, vehicle }) => {
      const subject = subjectOf(procedureFile);
      if (isProblem(subject)) return subject;
      if (vehicle.kind === 'real') return told(beginSession(desk, { subject, job, bench: null }));
      const { fault, intermittent } = vehicle;
      const bench = { fault, intermittent, seed: Math.floor(Math.random() * 1e6) };
      return told(beginSession(desk, { subject, job, bench }));
    },
    resume: async (path) => told(continueSession(desk, path)),
    settings: {
      values: desk.settings,
      set: (key, value) => {
        if (!desk.store) return 'the settings file cannot be used; fix or remove it first';
        const problem = desk.store.set(key, value);
        return problem ? `${problem.words}; ${problem.fix}` : null;
      },
      path: desk.store?.path ?? '',
    },
    clock: () => performance.now(),
    more: [drillMenuExtra(desk, onDrill)],
  };
}

/** Procedures, and behind them the circuits on which tests are free. */
function procedureEntries(desk: Desk): ProcedureEntry[] {
  return [
    ...startable(desk).map(({ draft, source }) => ({
      file: source.file,
      title: draft.title,
      about: draft.about ?? '',
      codes: draft.codes ?? [],
      circuit: draft.circuit ?? null,
    })),
    ...freeOrders(desk).map(({ name, title, about, circuit }) => ({
      file: name,
      title,
      about,
      codes: [],
      circuit,
    })),
  ];
}

/** Those of a procedure that the library has. */
function demoJobs({ library }: Desk, circuitOf: AppServices['circuitOf']): DemoJob[] {
  return library.jobFiles().flatMap(({ path, value }) => {
    if (!value) return [];
    const procedure = library.procedures.get(value.procedure ?? '')?.source.file;
    if (procedure === undefined) return [];
    const { job, fault, intermittent } = value;
    return [
      {
        file: path,
        words: job.vehicle.words || basename(path),
        complaint: job.complaint,
        sensor: sensorWords(circuitOf(procedure)),
        procedure,
        job,
        fault,
        intermittent,
      },
    ];
  });
}

function sensorWords(circuit: Circuit | null): string {
  return circuit ? sensorOf(circuit).words : '';
}
