import type { Plan } from '../plan/plan';
import { artFigures } from './art-difference';
import { drawnParts } from './drawn-parts';
import type { Figure } from './figure';
import { allowNotes } from './notes';
import { oneLine } from './one-line';
import { fitAndDepth, outcomes } from './outcomes';
import { costFigures, recipeFigures, runFigures, timeFigures } from './recipe-figures';
import { writtenFigures } from './written';

/**
 * A recipe and what follows from it as plain lines, one fact each, so that tools which compare lines
 * show facts: `label: value` is written, `= label: value` was worked out. The same plan gives the same text.
 * @param all also settings, amounts, times and money, which change by the dozen with one depth; else what follows for fit and depth
 */
export function planSummary(plan: Plan, all = false): string {
    const follows = all ? outcomes : fitAndDepth;
    const { recipe } = plan;
    const allows = allowNotes(plan);
    const allowed = (step?: number): string[] =>
        allows.filter((allow) => allow.step === step).map(({ rule, reason }) => oneLine(`allow ${rule}: ${reason}`));
    return [
        ...block(`recipe ${recipe.name}`, recipeFigures(recipe).slice(1), [], allowed()),
        ...recipe.arts.flatMap((art) => block(`art ${art.name}`, artFigures(art, plan.arts.get(art.name)), [])),
        ...plan.blanks.flatMap(({ blank }) => block(`blank ${blank.name}`, writtenFigures(blank), [])),
        ...plan.steps.flatMap((step) =>
            block(step.title, writtenFigures(step.step), follows(step, plan, drawnParts), allowed(step.step.index)),
        ),
        ...(all ? block('for one piece', [], timeFigures(plan.totals)) : []),
        ...(all ? block('for all the pieces', [], [...runFigures(plan), ...costFigures(plan.cost)]) : []),
    ].join('\n');
}

function block(title: string, written: readonly Figure[], worked: readonly Figure[], more: readonly string[] = []): string[] {
    return [
        oneLine(title),
        ...written.map(({ label, text }) => `  ${oneLine(`${label}: ${text}`)}`),
        ...more.map((line) => `  ${line}`),
        ...worked.map(({ label, text }) => `  = ${oneLine(`${label}: ${text}`)}`),
        '',
    ];
}
