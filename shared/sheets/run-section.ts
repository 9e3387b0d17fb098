import type { Cutting, Plan } from '../plan/plan';
import { showWhen } from '../quantity/calendar';
import { showLength, showNumber, showRatio, showTime } from '../quantity/show';
import { costLines } from './cost-lines';
import { type DayBookEntry, dayBook, jobWords } from './day-book';
import { escapeMarkup as text } from './escape';
import { readiness } from './readiness';

/** The run on the job sheet: the day book, how the sheets are cut, and the cost. Sections as [title, body]. */
export function runSections(plan: Plan, start?: number): [string, string][] {
    return [
        [plan.recipe.make === 1 ? 'Day book' : `Day book for ${plan.recipe.make} pieces`, bookOf(plan, start)],
        ['Sheets to cut', plan.cuttings.map(cuttingOf).join('')],
        ['Cost and price', costOf(plan)],
    ];
}

function bookOf(plan: Plan, start: number | undefined): string {
    const { schedule, recipe, unknown } = plan;
    if (unknown !== undefined) return `<p>${text(`Times and cost are unknown: ${unknown}.`)}</p>`;
    if (schedule.sittings.length === 0) return '';
    const hours = schedule.workday === undefined ? '' : `, working ${showTime(schedule.workday)} a day`;
    const head = `Ready ${start === undefined ? `after ${showTime(schedule.ready)}` : showWhen(schedule.ready, start)}${hours}: ${showTime(schedule.attended)} at the bench and the laser, ${showTime(schedule.idle)} of waiting.${schedule.scaled ? ' Only the first pieces are laid out; the rest follows at the same pace.' : ''}`;
    const started = start === undefined ? '<p>Started: <span class="line"></span></p>' : '';
    const rows = dayBook(plan).map((entry) => entryOf(entry, recipe.make, start));
    return `<p>${text(head)}</p>${started}<ol class="book">${rows.join('')}</ol>${readyOf(plan, start)}`;
}

/** When fills may be sanded, and the pieces shipped and used. */
function readyOf(plan: Plan, start: number | undefined): string {
    const lines = readiness(plan).map(({ what, from, why }) => {
        const when = from === undefined ? 'not yet' : showWhen(from, start);
        return `<li>${text(`${what}: ${when} (${why})`)}</li>`;
    });
    return lines.length === 0 ? '' : `<p>Not before</p><ul>${lines.join('')}</ul>`;
}

function entryOf(entry: DayBookEntry, make: number, start: number | undefined): string {
    const jobs = entry.jobs.map((job) => `<li>${text(jobWords(job, make))}</li>`).join('');
    const meanwhile = entry.meanwhile.length === 0 ? '' : `<p class="by">meanwhile: ${text(entry.meanwhile.join('; '))}</p>`;
    const pause =
        entry.pause === undefined
            ? ''
            : `<p class="by">then ${text(showTime(entry.pause))} with nothing to do${entry.until.length === 0 ? '' : `: ${text(entry.until.join('; '))}`}</p>`;
    return `<li><div class="box"></div><div class="when">${text(showWhen(entry.start, start))}</div><div><ul>${jobs}</ul>${meanwhile}${pause}</div></li>`;
}

/** Sheets drawn one by one; of more only the first are. */
const mostDrawn = 4;

function cuttingOf({ sheet, size, yielded, consumed }: Cutting): string {
    const unit = sheet.sheet?.width.unit;
    const words = [
        `${sheet.name}: ${yielded.sheets} of ${showLength(size.width, unit)} x ${showLength(size.height, unit)}`,
        `${showNumber(consumed, 2)} used up`,
        `${showRatio(yielded.used)} of what is bought ends up in blanks`,
        ...(yielded.tooLarge.length === 0 ? [] : [`${yielded.tooLarge.join(' and ')} does not fit a sheet`]),
        ...(yielded.scaled ? ['laid out in part'] : []),
    ];
    const drawn = yielded.layout.slice(0, mostDrawn).map((laid) => {
        const parts = laid.map(
            ({ name, x, y, width, height }) =>
                `<rect x="${showNumber(x)}" y="${showNumber(y)}" width="${showNumber(width)}" height="${showNumber(height)}" fill="#fff" stroke="#000" stroke-width="0.3%"/><text x="${showNumber(x + width / 2)}" y="${showNumber(y + height / 2)}" font-size="${showNumber(Math.min(height * 0.4, width * 0.16))}" text-anchor="middle" dominant-baseline="central">${text(name)}</text>`,
        );
        const label = text(`Cuts in a sheet of ${sheet.name}`);
        return `<svg class="cut" viewBox="0 0 ${showNumber(size.width)} ${showNumber(size.height)}" role="img" aria-label="${label}"><rect width="100%" height="100%" fill="#ddd"/>${parts.join('')}</svg>`;
    });
    return `<div class="sheet"><p>${text(words.join('; '))}.</p>${drawn.join('')}</div>`;
}

function costOf({ cost, recipe }: Plan): string {
    if (cost === undefined) return '';
    const rows = costLines(cost, recipe.make).map(
        ({ label, amount, note, sum }) =>
            `<tr${sum === true ? ' class="sum"' : ''}><td>${text(label)}</td><td class="n">${text(amount)}</td><td>${text(note)}</td></tr>`,
    );
    return `<table class="cost"><tbody>${rows.join('')}</tbody></table>`;
}
