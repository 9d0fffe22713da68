import { test, vi } from 'vitest';
vi.mock('../../src/records/session-record.ts', () => ({ recordOf: () => ({}) }));
vi.mock('../../src/records/transcript.ts', () => ({ transcriptOf: () => '' }));
import { debriefOf } from '../../src/drill/debrief.ts';
import { newDrill, partsChanger, perfectStudent } from './students.ts';
test('x', () => {
  for (const student of [perfectStudent, partsChanger]) {
    let right = 0, points = 0; const t = process.cpuUsage().user;
    for (let s = 1; s <= 12; s++) {
      const d = newDrill(s);
      student(d);
      const ses = d.driver.session();
      if (!ses.revealed) { console.log(s, 'not revealed', JSON.stringify(d.advisor!.suspects(ses).rows.slice(0,2))); continue; }
      right += Number(ses.revealed.right); points += ses.revealed.points;
      if (s <= 3 && student === perfectStudent) console.log(JSON.stringify(debriefOf(ses, d.world).facts), JSON.stringify(ses.revealed.score));
    }
    console.log(right, points / 24, (process.cpuUsage().user - t) / 1000);
  }
}, 600000);
