import { showLength } from '../quantity/show';
import type { Recipe } from '../recipe/recipe';
import type { Do, Flip, PlaceFinder } from '../recipe/step';
import type { LaserPlan } from './laser-plan';
import type { FoundPlace } from './laying';
import type { Plan } from './plan';

/**
 * How far off a blank may lie where nobody says it, mm: drilled pins without play, a fence with stops, marks met by eye with the pointer of
 * the laser, and a frame of which nobody knows the kerf. @commonPractice
 */
const usuallyWithin: Readonly<Record<PlaceFinder, number>> = { pins: 0.1, fence: 0.2, marks: 0.3, frame: 0.2 };

/** What a `do` or `flip` says of how the blank is found again; undefined where it says nothing of it. */
export function foundPlaceOf({ steps }: Pick<Plan, 'steps'>, said: Do | Flip): FoundPlace | undefined {
    const { found } = said;
    if (found === undefined) return undefined;
    const name = found.of?.value;
    const mark = name === undefined ? undefined : steps.find(({ laser }) => laser?.step.name === name)?.laser;
    return { by: found.by, said, ...exactnessOf(found.by, found.within?.value, mark), ...(mark === undefined ? {} : { mark }) };
}

/** A part lies in its frame with the kerf free all round, so it may be pushed to one side by as much. */
function exactnessOf(
    by: PlaceFinder,
    typed: number | undefined,
    mark: LaserPlan | undefined,
): Pick<FoundPlace, 'exact' | 'from'> {
    if (typed !== undefined) return { exact: typed, from: 'maker' };
    const kerf = by === 'frame' ? mark?.kerf?.face.value : undefined;
    return kerf === undefined ? { exact: usuallyWithin[by], from: 'practice' } : { exact: kerf, from: 'kerf' };
}

/** Whether a blank is found by what a step burns: it has done its work once that set-up is laid. */
export function isMarkOf({ steps }: Pick<Recipe, 'steps'>, name: string): boolean {
    return steps.some((step) => (step.kind === 'flip' || step.kind === 'do') && step.found?.of?.value === name);
}

/** "on the pins of pegs, to within 0.1 mm", and what that figure rests on. @commonPractice */
export function foundPlaceWords({ by, exact, from, said }: FoundPlace): string {
    const ways: Readonly<Record<PlaceFinder, string>> = {
        fence: 'against the fence',
        pins: 'on the pins',
        marks: 'by the marks',
        frame: 'back in the frame',
    };
    const name = said.found?.of?.value;
    const sources = { maker: '', kerf: ', as wide as the kerf', practice: ' (common practice)' } as const;
    return `${ways[by]}${name === undefined ? '' : ` of ${name}`}, to within ${showLength(exact)}${sources[from]}`;
}
