import { stepKey } from '../plan/step-key';
import type { Step } from '../recipe/step';
import type { Figure } from './figure';
import { writtenFigures } from './written';

/** A step as it is written, told so that it can be found again in another version of its recipe. */
export interface ToldStep {
    readonly step: Step;
    /** Kind and what it is done to. */
    readonly key: string;
    readonly figures: readonly Figure[];
    /** Says everything that is written: equal where two steps say the same. */
    readonly content: string;
}

export function toldStep(step: Step): ToldStep {
    const key = stepKey(step);
    const figures = writtenFigures(step);
    return { step, key, figures, content: JSON.stringify([key, ...figures.map((figure) => [figure.label, figure.key])]) };
}
