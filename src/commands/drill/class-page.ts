/** A class's drills as one HTML page: tables and pictures as inline SVG, no script, nothing from outside. */
import type { ClassMiss, ClassRow, ClassSummary } from '../../drill/class-summary.ts';
import {
  DIAGNOSIS_POINTS,
  EVIDENCE_POINTS,
  SAFETY_POINTS,
  TIME_POINTS,
} from '../../drill/score.ts';
import { html, htmlHead, type Markup } from '../../records/html.ts';
import { classStyle } from './class-style.ts';
import type { DoubtfulFile } from './doubtful-file.ts';

const POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

/** The results of a class as one HTML page with its pictures; needs no other file. */
export function classPage(
  title: string,
  summary: ClassSummary,
  doubtful: readonly DoubtfulFile[],
): string {
  const { rows, students, finished, meanPoints, medianPoints } = summary;
  const done = rows.filter((row) => row.points !== null);
  return `${
    html`<!DOCTYPE html>
<html lang="en">
${htmlHead(`Drills: ${title}`, classStyle, POLICY)}
<body>
<header>
<h1>Drills of a class</h1>
<p dir="auto">${title}</p>
<p>${String(students)} students, ${String(rows.length)} drills, ${String(finished)} finished${
      meanPoints === null || medianPoints === null
        ? ''
        : `; mean points ${meanPoints.toFixed(1)}, median ${medianPoints.toFixed(1)}`
    }</p>
</header>
<main>
${doubtful.length === 0 ? [] : [doubtfulSection(doubtful)]}
${done.length === 0 ? [] : [spreadSection(summary), minutesSection(done), missesSection(summary.misses)]}
<section>
<h2>Every drill</h2>
${drillsTable(rows)}
</section>
</main>
</body>
</html>`.source
  }\n`;
}

function doubtfulSection(doubtful: readonly DoubtfulFile[]): Markup {
  return html`<section class="doubt">
<h2>Look at these files</h2>
<ul>
${doubtful.map(({ file, kind, words }) => html`<li dir="auto"><strong>${kind}</strong>: ${file}: ${words}</li>\n`)}</ul>
</section>`;
}

const WIDE = 640;
const HIGH = 220;
const LEFT = 44;
const BOTTOM = 34;
const TOP = 14;

function spreadSection({ bins }: ClassSummary): Markup {
  const most = Math.max(1, ...bins);
  const step = (WIDE - LEFT - 10) / bins.length;
  const bars = bins.map((count, bin) => {
    const height = ((HIGH - TOP - BOTTOM) * count) / most;
    const x = LEFT + bin * step + 3;
    const y = HIGH - BOTTOM - height;
    const label = `${bin * 10} to ${bin === 9 ? 100 : bin * 10 + 9}`;
    return html`<g><title>${label} points: ${String(count)} drills</title><rect class="bar" x="${n(x)}" y="${n(y)}" width="${n(step - 6)}" height="${n(height)}"/><text class="mid" x="${n(x + step / 2 - 3)}" y="${n(y - 3)}">${count === 0 ? '' : String(count)}</text><text class="mid" x="${n(x + step / 2 - 3)}" y="${n(HIGH - BOTTOM + 15)}">${label.replace(' to ', '-')}</text></g>`;
  });
  return html`<section>
<h2>Distribution of points</h2>
<svg viewBox="0 0 ${n(WIDE)} ${n(HIGH)}" role="img" aria-label="${`Drills by points, from 0 to 9 up to 90 to 100: ${bins.join(', ')}`}">
<path class="axis" d="M${n(LEFT)} ${n(HIGH - BOTTOM)}H${n(WIDE - 6)}"/>
${bars}
<text class="mid" x="${n(WIDE / 2)}" y="${n(HIGH - 3)}">points</text>
</svg>
</section>`;
}

/** Minutes between marks of an axis, and marks at most. */
const TICK_STEPS = [2, 5, 10, 20, 50, 100, 200, 500];
const TICKS_MAX = 8;

/** Each drill as a mark: right ones filled, wrong ones a cross; on the line a student was as quick as the best plan. */
function minutesSection(rows: readonly ClassRow[]): Markup {
  const most =
    Math.max(10, ...rows.flatMap((row) => [row.minutes, row.yardstickMinutes ?? 0])) * 1.05;
  const high = 320;
  const x = (minutes: number) => LEFT + (minutes / most) * (WIDE - LEFT - 10);
  const y = (minutes: number) => high - BOTTOM - (minutes / most) * (high - TOP - BOTTOM);
  const step = TICK_STEPS.find((one) => most / one <= TICKS_MAX) ?? most;
  const ticks = Array.from({ length: Math.floor(most / step) + 1 }, (_, index) => index * step);
  const marks = rows.map((row) => {
    const at = [x(row.yardstickMinutes ?? 0), y(row.minutes)] as const;
    const words = `${row.student}, ${row.procedure}: ${row.minutes} min, best plan ${row.yardstickMinutes} min, ${row.right ? 'right' : 'not right'}`;
    return row.right
      ? html`<circle class="right" cx="${n(at[0])}" cy="${n(at[1])}" r="4.5"><title>${words}</title></circle>`
      : html`<path class="wrong" d="M${n(at[0] - 4)} ${n(at[1] - 4)}l8 8m0 -8l-8 8"><title>${words}</title></path>`;
  });
  return html`<section>
<h2>Minutes against the best plan</h2>
<svg viewBox="0 0 ${n(WIDE)} ${n(high)}" role="img" aria-label="Each drill: minutes taken over minutes of the best plan; the table below has the numbers">
<path class="axis" d="M${n(LEFT)} ${n(TOP)}V${n(high - BOTTOM)}H${n(WIDE - 6)}"/>
<path class="even" d="M${n(x(0))} ${n(y(0))}L${n(x(most))} ${n(y(most))}"/>
${ticks.map((tick) => html`<text class="mid" x="${n(x(tick))}" y="${n(high - BOTTOM + 14)}">${String(tick)}</text><text class="end" x="${n(LEFT - 5)}" y="${n(y(tick) + 4)}">${String(tick)}</text>`)}
${marks}
<text class="mid" x="${n(WIDE / 2)}" y="${n(high - 3)}">best plan, min</text>
<text class="mid" transform="translate(11 ${n(high / 2)}) rotate(-90)" x="0" y="0">taken, min</text>
</svg>
<p>Filled circles are right diagnoses, crosses are not. On the dashed line a student was as quick as the best plan; a cross below it was quick and wrong.</p>
</section>`;
}

function missesSection(misses: readonly ClassMiss[]): Markup {
  const row = 26;
  const high = misses.length * row + 8;
  const left = 110;
  const room = WIDE - left - 90;
  const bars = misses.map(({ class: name, right, total }, index) => {
    const y = 6 + index * row;
    return html`<g><title>${name}: ${String(right)} of ${String(total)} found</title><text class="end" x="${n(left - 8)}" y="${n(y + 14)}">${name}</text><rect class="room" x="${n(left)}" y="${n(y)}" width="${n(room)}" height="18"/><rect class="bar" x="${n(left)}" y="${n(y)}" width="${n((room * right) / total)}" height="18"/><text x="${n(left + room + 8)}" y="${n(y + 14)}">${String(right)} of ${String(total)}</text></g>`;
  });
  return html`<section>
<h2>Which faults the class finds, most missed first</h2>
<svg viewBox="0 0 ${n(WIDE)} ${n(high)}" role="img" aria-label="${misses.map(({ class: name, right, total }) => `${name}: ${right} of ${total} found`).join('; ')}">
${bars}
</svg>
</section>`;
}

const HEADS = [
  'Student',
  'Drill',
  'Points',
  `Diagnosis, of ${DIAGNOSIS_POINTS}`,
  `Evidence, of ${EVIDENCE_POINTS}`,
  `Time, of ${TIME_POINTS}`,
  `Safety, of ${SAFETY_POINTS}`,
  'Danger, taken off',
  'Minutes (best)',
  'Actual fault',
];

function drillsTable(rows: readonly ClassRow[]): Markup {
  return html`<div class="wide"><table>
<thead><tr>${HEADS.map((head) => html`<th scope="col">${head}</th>`)}</tr></thead>
<tbody>
${rows.map(
  (row) =>
    html`<tr><th scope="row" dir="auto">${row.student || '(no name)'}</th><td>${[row.procedure, row.level, row.assignment === '' ? '' : `${row.assignment} ${row.part}`].filter(Boolean).join(', ')}</td><td>${row.points === null ? 'not finished' : `${row.points}${row.right ? '' : ', not right'}`}</td>${(['diagnosis', 'evidence', 'time', 'safety', 'danger'] as const).map((name) => partCell(row, name))}<td>${`${row.minutes}${row.yardstickMinutes === null ? '' : ` (${row.yardstickMinutes})`}${row.late ? ', late' : ''}`}</td><td>${row.truth}</td></tr>\n`,
)}</tbody>
</table></div>`;
}

function partCell({ parts }: ClassRow, name: string): Markup {
  const part = parts.find((one) => one.name === name);
  return part
    ? html`<td title="${`of ${part.most}`}">${String(part.points)}</td>`
    : html`<td></td>`;
}

/** Numbers only ever come into the drawing through here. */
function n(value: number): string {
  return String(Math.round(value * 10) / 10);
}
