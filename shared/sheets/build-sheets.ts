import type { Plan } from '../plan/plan';
import type { Finding } from '../recipe/finding';
import { jobSheet } from './job-sheet';
import { planJson } from './plan-json';
import { type SheetFile, setUpSvg, setUps } from './setup-svg';
import { shoppingList } from './shopping-list';

/** Everything that is written for machine and bench. */
export function buildSheets(plan: Plan, findings: readonly Finding[]): SheetFile[] {
    return [
        ...setUps(plan).map((setUp) => setUpSvg(plan, setUp)),
        jobSheet(plan, findings),
        shoppingList(plan),
        {
            path: 'plan.json',
            text: `${JSON.stringify(planJson(plan, findings), null, 2)}\n`,
            note: 'everything that was worked out',
        },
    ];
}
