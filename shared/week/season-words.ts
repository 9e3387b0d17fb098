import { minorDigits, showMoney } from '../quantity/currency';
import { showNumber } from '../quantity/show';
import { oneLine } from '../review/one-line';
import { csv } from '../sheets/csv';
import type { Season, SeasonSums } from './season';
import { columns, plural, showHours } from './week-words';

export const seasonColumns = [
    'recipe',
    'runs',
    'made',
    'spoiled',
    'hours planned',
    'hours taken',
    'of plan',
    'cost planned',
    'cost real',
    'real, each good one',
] as const;

/** Two lines at most: what came of it, and what no sum knows. */
export function seasonHead({ from, to, total }: Season): string[] {
    const begun = total.made + total.spoiled;
    const share = begun > 0 ? ` (${showNumber((100 * total.spoiled) / begun, 1)} % of what was begun)` : '';
    const days = from === undefined ? '' : from === to ? `${from}: ` : `${from} to ${to}: `;
    return [
        `${days}${plural(total.runs, 'run')}, ${plural(total.made, 'piece')} made, ${total.spoiled} spoiled${share}.`,
        ...(total.uncounted === 0
            ? []
            : [
                  `${plural(total.uncounted, 'run')} ${total.uncounted === 1 ? 'does' : 'do'} not say what came of it: write \`made\` in it.`,
              ]),
    ];
}

/** Rows in the order of the columns, the sum last. */
export function seasonRows({ recipes, total, currency }: Season): string[][] {
    const row = (name: string, sums: SeasonSums): string[] => [
        name,
        String(sums.runs),
        // Of runs that do not say what came of them, nothing is not what came of them.
        ...[sums.made, sums.spoiled].map((pieces) => (sums.uncounted === sums.runs ? '' : String(pieces))),
        sums.planned > 0 ? showHours(sums.planned) : '',
        sums.took > 0 ? showHours(sums.took) : '',
        sums.plannedOfTook > 0 && sums.took > 0 ? `${showNumber((100 * sums.took) / sums.plannedOfTook, 0)} %` : '',
        ...[sums.cost, sums.realCost, sums.realEach].map((cost) =>
            cost === undefined || currency === undefined ? '' : showMoney(cost, currency),
        ),
    ];
    return [...recipes.map((each) => row(each.recipe, each)), row('in all', total)];
}

export function makerWords({ makers }: Season): string[] {
    return makers.map(({ by, made, took }) => `${by}: ${plural(made, 'piece')}${took > 0 ? `, ${showHours(took)}` : ''}`);
}

export function seasonText(season: Season): string {
    return [
        ...seasonHead(season),
        '',
        ...columns([[...seasonColumns], ...seasonRows(season)]),
        ...(season.makers.length === 0 ? [] : ['', ...makerWords(season)]),
        '',
    ]
        .map((line) => oneLine(line))
        .join('\n');
}

/** Numbers a spreadsheet can go on with: hours as decimals. */
export function seasonCsv({ recipes, currency }: Season): string {
    const hours = (seconds: number): string => showNumber(seconds / 3600, 2);
    return csv([
        [
            'recipe',
            'title',
            'runs',
            'uncounted',
            'made',
            'spoiled',
            'planned h',
            'took h',
            'planned of these h',
            'cost',
            'real cost',
            'currency',
        ],
        ...recipes.map((row) => [
            row.recipe,
            row.title,
            String(row.runs),
            String(row.uncounted),
            String(row.made),
            String(row.spoiled),
            hours(row.planned),
            hours(row.took),
            hours(row.plannedOfTook),
            ...[row.cost, row.realCost].map((cost) =>
                cost === undefined || currency === undefined ? '' : cost.toFixed(minorDigits(currency)),
            ),
            row.cost === undefined ? '' : (currency ?? ''),
        ]),
    ]);
}
