import type { Memo } from '../plan/memo';
import type { Plan } from '../plan/plan';
import { pressAll } from '../plan/plan-press';
import { allTrades } from '../plan/plan-trade';
import { setUps } from '../plan/set-ups';
import type { Finding } from '../recipe/finding';
import type { Message } from '../recipe/phrase';
import { jobSheet } from './job-sheet';
import { planJson } from './plan-json';
import { setUpRs274 } from './setup-rs274';
import { type SheetFile, setUpSvg } from './setup-svg';
import { shoppingList } from './shopping-list';

export interface Sheets {
    readonly files: readonly SheetFile[];
    /** What could not be written, and why. */
    readonly problems: readonly Message[];
}

/** Everything that is written for machine and bench. @param start when the work begins, a moment of quantity/calendar */
export function buildSheets(plan: Plan, findings: readonly Finding[], memo: Memo, start?: number): Sheets {
    const files: SheetFile[] = [];
    const problems: Message[] = [];
    for (const setUp of setUps(plan)) {
        files.push(setUpSvg(plan, setUp, memo));
        const machine = setUpRs274(plan, setUp, memo);
        if ('problem' in machine) problems.push(machine.problem);
        else files.push(machine);
    }
    const presses = pressAll(plan, memo);
    files.push(jobSheet(plan, findings, { presses, start }), shoppingList(plan));
    const json = `${JSON.stringify(planJson(plan, findings, { presses, trades: allTrades(plan, memo), ...(start === undefined ? {} : { start }) }), null, 2)}\n`;
    files.push({ path: 'plan.json', text: json, note: 'everything that was worked out' });
    return { files, problems };
}
