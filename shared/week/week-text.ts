import { oneLine } from '../review/one-line';
import type { Week } from './week';
import {
    buyWords,
    byDay,
    columns,
    cuttingWords,
    dateOf,
    headWords,
    jobWords,
    lateWords,
    loadWords,
    meanwhileWords,
    orderWords,
    sheetWords,
    timesOf,
} from './week-words';

/** The book for a terminal: what is late first, then orders, days, sheets and what to buy. */
export function weekText(week: Week): string {
    const { orders, makers, cuttings, shopping, currency } = week;
    const late = orders.filter((order) => order.late !== undefined);
    return [
        ...headWords(week),
        ...part('Late', late.map(lateWords)),
        ...part('Orders', columns(orders.map((order) => [`ready ${dateOf(order.ready)}`, orderWords(order)]))),
        ...part('Load', loadWords(week)),
        ...byDay(week).flatMap(({ day, sittings }) =>
            part(
                day,
                sittings.flatMap((sitting) => [
                    `${timesOf(sitting)}${makers > 1 ? `, hands ${sitting.hands}` : ''}`,
                    ...sitting.jobs.map((job) => `  ${jobWords(job)}`),
                    ...(sitting.meanwhile.length === 0 ? [] : [`  meanwhile: ${meanwhileWords(sitting)}`]),
                ]),
            ),
        ),
        ...part(
            'Cut',
            cuttings.flatMap((cutting) => [cuttingWords(cutting), ...sheetWords(cutting).map((words) => `  ${words}`)]),
        ),
        ...part('Buy', columns(shopping.filter(({ buy }) => buy > 0).map((line) => buyWords(line, currency)))),
        '',
    ]
        .map((line) => oneLineKept(line))
        .join('\n');
}

/** Without what steers a terminal; the indent stays. */
function oneLineKept(line: string): string {
    const indent = /^ */.exec(line)![0];
    return `${indent}${oneLine(line)}`;
}

function part(title: string, lines: readonly string[]): string[] {
    return lines.length === 0 ? [] : ['', title, ...lines.map((line) => `  ${line}`)];
}
