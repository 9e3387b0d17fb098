import { showRatio } from '../quantity/show';
import { csv } from '../sheets/csv';
import { escapeMarkdown as md, table } from './markdown';
import { oneLine } from './one-line';
import { boardLine, metLine, plannedWords } from './planned-words';
import { keptBeside, type PastRow, type PastRun, type RunHistory } from './run-history';

/** Histories for a terminal. */
export function historyText(histories: readonly RunHistory[]): string {
    return histories.map(oneText).join('\n');
}

function oneText(history: RunHistory): string {
    const { recipe, runs, earlier, met, boards } = history;
    return [
        `${oneLine(recipe)}: ${runCount(runs.length + earlier)}${earlier === 0 ? '' : `, the last ${runs.length}`}`,
        ...runs.flatMap((run) => [
            `  ${heading(run)}; ${plannedWords(run.planned)}`,
            ...run.steps.flatMap(({ step, sheet, rows }) => [
                `    ${oneLine(step)}${sheet === undefined ? '' : ` of ${oneLine(sheet)}`}`,
                ...rows.map((row) => `      ${rowText(row)}`),
            ]),
            ...[...run.notes, ...keptBeside(run)].map((note) => `    ${oneLine(note)}`),
        ]),
        ...section('Measured over planned depth', met.map(metLine)),
        ...section('Power of the laser, by all runs', boards.map(boardLine)),
        '',
    ].join('\n');
}

function section(title: string, lines: readonly string[]): string[] {
    return lines.length === 0 ? [] : [`  ${title}`, ...lines.map((line) => `    ${oneLine(line)}`)];
}

function rowText({ what, planned, actual, ratio }: PastRow): string {
    const part = ratio === undefined ? '' : ` (${showRatio(ratio)})`;
    return oneLine(
        `${what}: ${planned === undefined ? '' : `planned ${planned}, `}${isMeasured(what) ? 'measured' : 'burnt at'} ${actual ?? 'nothing'}${part}`,
    );
}

const settings: ReadonlySet<PastRow['what']> = new Set(['power', 'speed', 'pitch', 'passes']);

function isMeasured(what: PastRow['what']): boolean {
    return !settings.has(what);
}

export function heading({ date, revision, laser }: PastRun): string {
    return [
        date,
        ...(revision === undefined ? [] : [`issue ${revision}`]),
        ...(laser === undefined ? [] : [`on ${oneLine(laser)}`]),
    ].join(', ');
}

export function runCount(count: number): string {
    return count === 0 ? 'no runs' : count === 1 ? 'one run' : `${count} runs`;
}

export function historyMarkdown(histories: readonly RunHistory[]): string {
    return histories
        .flatMap(({ recipe, title, runs, earlier, met, boards }) => [
            `### ${md(title === '' ? recipe : title)}: ${runCount(runs.length + earlier)}${earlier === 0 ? '' : `, the last ${runs.length}`}`,
            '',
            ...runs.flatMap((run) => [
                `**${md(heading(run))}**, ${md(plannedWords(run.planned))}`,
                '',
                ...table(
                    ['', '', 'planned', 'measured or set', 'of plan'],
                    run.steps.flatMap(({ step, sheet, rows }) =>
                        rows.map(({ what, planned, actual, ratio }) => [
                            md(`${step}${sheet === undefined ? '' : ` of ${sheet}`}`),
                            what,
                            md(planned ?? '–'),
                            md(actual ?? '–'),
                            ratio === undefined ? '' : showRatio(ratio),
                        ]),
                    ),
                ),
                ...[...run.notes, ...keptBeside(run)].flatMap((note) => [`> ${md(note)}`, '']),
            ]),
            ...titled('Measured over planned depth', met.map(metLine)),
            ...titled('Power of the laser, by all runs', boards.map(boardLine)),
        ])
        .join('\n');
}

function titled(title: string, items: readonly string[]): string[] {
    return items.length === 0 ? [] : [`**${title}**`, '', ...items.map((item) => `- ${md(item)}`), ''];
}

/** A line for each figure of each run. */
export function historyCsv(histories: readonly RunHistory[]): string {
    return csv([
        [
            'recipe',
            'date',
            'issue',
            'laser',
            'held against',
            'step',
            'sheet',
            'what',
            'planned',
            'measured or set',
            'part of plan',
        ],
        ...histories.flatMap(({ recipe, runs }) =>
            runs.flatMap(({ date, revision, laser, planned: { by, commit }, steps }) =>
                steps.flatMap(({ step, sheet, rows }) =>
                    rows.map(({ what, planned, actual, ratio }) =>
                        [
                            recipe,
                            date,
                            revision === undefined ? '' : String(revision),
                            laser ?? '',
                            commit === undefined ? by : `${by} (${commit})`,
                            step,
                            sheet ?? '',
                            what,
                            planned ?? '',
                            actual ?? '',
                            ratio === undefined ? '' : ratio.toFixed(4),
                        ].map((text) => oneLine(text)),
                    ),
                ),
            ),
        ),
    ]);
}
