import { readFileSync, readdirSync } from 'node:fs';
import { it } from 'vitest';
import { judgeFile } from '../../src/log/read-session-file.ts';
import { readSessionLog } from '../../src/log/read-session.ts';
import { recordOf } from '../../src/records/session-record.ts';
import { exportRecord } from '../../src/records/export-record.ts';
import { createModel } from '../../src/circuit/model.ts';
import { createAdvisor } from '../../src/session/create-advisor.ts';
import { retestLines } from '../../src/session/retest.ts';

type J = any;
function* leaves(v: J, path: (string | number)[] = []): Generator<(string | number)[]> {
  yield path;
  if (v && typeof v === 'object') for (const k of Object.keys(v)) yield* leaves(v[k], [...path, Array.isArray(v) ? Number(k) : k]);
}
function withAt(v: J, path: (string | number)[], to: (old: J) => J): J {
  if (path.length === 0) return to(v);
  const [k, ...rest] = path;
  const copy = Array.isArray(v) ? [...v] : { ...v };
  const made = withAt(copy[k!], rest, to);
  if (made === undefined) { if (Array.isArray(copy)) copy.splice(k as number, 1); else delete copy[k!]; } else copy[k!] = made;
  return copy;
}
const MUTS: ((o: J) => J)[] = [() => undefined, () => null, (o) => (typeof o === 'string' ? `${o}x` : 'x'), (o) => (typeof o === 'number' ? -o : 0), (o) => (typeof o === 'number' ? o * 1e6 : 1e9), () => [], () => ({}), () => true, (o) => (Array.isArray(o) && o.length ? [...o, o[0]] : 0), (o) => (typeof o === 'string' ? '' : 0.5), (o) => (typeof o === 'string' ? 'constructor' : -1e-9)];
let seed = Number(process.env['SEED'] ?? 1);
const rnd = () => { seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0; return seed / 2 ** 32; };
it('fuzz', () => {
  const files = (process.env['FILES'] ?? readdirSync('tests/log/versions').map((f) => `tests/log/versions/${f}`).join(',')).split(',');
  const share = Number(process.env['SHARE'] ?? 0.02);
  const deep = process.env['DEEP'] === '1';
  for (const file of files) {
    const log = readSessionLog(readFileSync(file));
    const events = log.events as J[];
    let n = 0, ok = 0; const errors = new Map<string, string>(); const t0 = performance.now(); let slow = 0, slowAt = '';
    events.forEach((event, at) => {
      for (const path of leaves(event)) {
        if (path.length === 0 || path[0] === 'seq' || path[0] === 'prev') continue;
        for (const [m, mut] of MUTS.entries()) {
          if (rnd() > share) continue;
          const changed = withAt(event, path, mut);
          if (JSON.stringify(changed) === JSON.stringify(event)) continue;
          const list = events.map((e, i) => (i === at ? changed : e));
          n += 1;
          const what = `${at} ${path.join('.')} mut ${m}`;
          const t = performance.now();
          try {
            const j = judgeFile({ events: list, log, paths: ['x'], starts: [1] });
            if (!j.flaw && j.stands) {
              ok += 1;
              if (deep) {
                const { session } = j.stands;
                exportRecord(recordOf(session, j.stands.head), 'markdown', 'shop');
                exportRecord(recordOf(session, j.stands.head), 'html', 'customer');
                retestLines(session);
                const { circuit } = session.opened;
                if (circuit) {
                  const advisor = createAdvisor(createModel(circuit, { samples: 2, seed: 1, meter: session.opened.meter }), session.opened);
                  advisor.suspects(session); advisor.nextTests(session); if (session.concluded) advisor.weigh(session, session.concluded.faults);
                }
              }
            }
          } catch (e) {
            const key = String((e as Error).message).slice(0, 90);
            if (!errors.has(key)) errors.set(key, `${what}: ${(e as Error).stack?.split('\n').slice(1, 4).join(' | ')}`);
          }
          const d = performance.now() - t; if (d > slow) { slow = d; slowAt = what; }
        }
      }
    });
    console.log(file, 'tried', n, 'passed', ok, 'ms', Math.round(performance.now() - t0), 'slowest', Math.round(slow), slowAt);
    for (const [k, v] of errors) console.log('  !!', k, '\n     ', v);
  }
}, 1e9);
