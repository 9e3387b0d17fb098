import type { LangiumDocument } from 'langium';
import type { RunFigures } from '../../shared/view/run-figures';
import type { StepFigures } from '../../shared/view/step-figures';
import { isFile, isRecipe, isStep, type Recipe, type Step } from '../generated/ast';
import { Items } from '../lowering/items';
import { membersOf } from '../variants/members';
import { mergedItems } from '../variants/merge';

/** What the last plan of a file said of one step, with the words that stood there then. */
export interface PlannedStep {
    readonly recipe: string;
    readonly text: string;
    readonly figures: StepFigures;
}

/** What the last plan of a file said of one recipe's run, for how many pieces. */
export interface PlannedRun {
    readonly recipe: string;
    readonly make: number;
    readonly figures: RunFigures;
}

/**
 * What was planned of a recipe, as long as it makes as many. While a step is being written the figures of
 * a moment ago stay, so that they do not come and go with every letter.
 */
export function plannedRun(recipe: Recipe, planned: readonly PlannedRun[]): RunFigures | undefined {
    const make = new Items({ $type: 'Recipe', items: mergedItems(recipe) }).count('make')?.value ?? 1;
    return planned.find((run) => run.recipe === recipe.name && run.make === make)?.figures;
}

/**
 * The steps of a document with what was planned for them. A step whose own words have changed since
 * has nothing: its figures would be those of other words. Where it stands does not matter.
 */
export function* plannedSteps(document: LangiumDocument, planned: readonly PlannedStep[]): Iterable<[Step, StepFigures]> {
    const file = document.parseResult.value;
    if (!isFile(file) || planned.length === 0) return;
    const waiting = new Map<string, StepFigures[]>();
    for (const { recipe, text, figures } of planned) {
        const key = `${recipe}\n${text}`;
        waiting.set(key, [...(waiting.get(key) ?? []), figures]);
    }
    for (const recipe of file.entries.filter(isRecipe)) {
        for (const step of membersOf(recipe).filter(isStep)) {
            const figures = waiting.get(`${recipe.name}\n${step.$cstNode?.text ?? ''}`)?.shift();
            if (figures !== undefined) yield [step, figures];
        }
    }
}
