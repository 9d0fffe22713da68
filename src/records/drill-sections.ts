/** What the report of a drill says beside that of any other session. */
import { levelNamed } from '../drill/levels.ts';
import { cell } from './measurement-tables.ts';
import type { RecordAnswer, RecordDrill, SessionRecord } from './record-form.ts';
import type { Block, Section } from './report-form.ts';
import { filled, timeWords } from './report-words.ts';

/** The drill, what was stopped or passed over, and the debrief; none for other sessions. */
export function drillSections({ drill }: SessionRecord): Section[] {
  if (!drill) return [];
  return [
    { heading: 'Drill', blocks: [facts(drill), ...stopped(drill), ...passedOver(drill)] },
    { heading: 'Debrief', blocks: debrief(drill) },
  ];
}

function facts({ level, seed, commitment, assignment, answer }: RecordDrill): Block {
  const { number, title, about } = levelNamed(level);
  const limit = assignment?.limitMinutes ?? null;
  return {
    kind: 'facts',
    rows: filled([
      ['Level', `${number}, ${title}. ${about}`],
      [
        'Assignment',
        assignment
          ? `${assignment.name}, part ${assignment.part}${limit === null ? '' : `, ${limit} minutes on the clock`}`
          : '',
      ],
      ['Vehicle', `${seed}`],
      ['Sealed answer', commitment],
      ...(answer ? answerRows(answer) : []),
    ]),
  };
}

/** What a dangerous test takes off is of nothing. */
function partWords({ name, points, most }: RecordAnswer['score'][number]): string {
  return name === 'danger' ? `${name} ${points}` : `${name} ${points} of ${most}`;
}

function answerRows(answer: RecordAnswer): [string, string][] {
  const { faults, repairs, right, points, score, minutes, yardstickMinutes, late } = answer;
  return [
    ['Result', `${right ? 'RIGHT' : 'NOT RIGHT'}, ${points} of 100 points`],
    ['Actual fault', faults.map(({ words, id }) => `${words} [${id}]`).join('; ')],
    ['Repair', repairs.join(' ')],
    ['Score', score.map(partWords).join('; ')],
    [
      'Minutes',
      `${minutes}, the best plan ${yardstickMinutes}${late ? '; over the time limit' : ''}`,
    ],
    ['Salt', answer.salt],
  ];
}

function stopped({ stopped: tests }: RecordDrill): Block[] {
  if (tests.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: 'Stopped by the bench as dangerous',
      heads: ['Time', 'Test', 'Where, vehicle state', 'Why'],
      widths: [10, 22, 30, 24],
      rows: tests.map((one) => [
        cell(timeWords(one)),
        cell(one.test),
        cell(one.where, one.setup),
        cell(one.words),
      ]),
    },
  ];
}

function passedOver({ passedOver: tests }: RecordDrill): Block[] {
  if (tests.length === 0) return [];
  return [
    {
      kind: 'list',
      items: tests.map((one) => `${timeWords(one)}: passed over: ${one.cautions.join(' ')}`),
    },
  ];
}

function debrief({ debrief: whole }: RecordDrill): Block[] {
  const items = (whole?.lines ?? []).map((line) => line.trim()).filter((line) => line !== '');
  return items.length === 0 ? [] : [{ kind: 'list', items }];
}
