import type { AstNode } from 'langium';
import { KeptOn } from '../../shared/plan/kept';
import * as ast from '../generated/ast';

/** A step of a routine as a recipe does it: the routine it is written in, and the lines that lead there, the recipe's own first. */
export interface FollowedStep {
    readonly routine: ast.Routine;
    readonly uses: readonly [ast.Follow, ...ast.Follow[]];
}

const followed = new KeptOn<AstNode, FollowedStep>();

/** The routine out of which a step came into its recipe; undefined for one of the recipe's own. */
export function followedBy(step: ast.Step): FollowedStep | undefined {
    return followed.get(step);
}

/**
 * The lines of a recipe with the steps of a routine in the place of each line that follows it. Every step stands where the routine
 * has it and is done on the blank that the line names. What leads nowhere or back to itself is left as it is: the text's own
 * findings say so.
 */
export function expanded(lines: readonly ast.RecipeItem[]): readonly ast.RecipeItem[] {
    if (!lines.some(ast.isFollow)) return lines;
    return lines.flatMap((line): readonly ast.RecipeItem[] => (ast.isFollow(line) ? stepsOf([line], []) : [line]));
}

function stepsOf(uses: FollowedStep['uses'], around: readonly ast.Routine[]): readonly ast.Step[] {
    const line = uses.at(-1)!;
    const routine = line.routine?.ref;
    const { blank } = uses[0];
    if (routine === undefined || blank === undefined || around.includes(routine)) return [line];
    return routine.items.flatMap((step): readonly ast.Step[] => {
        if (ast.isFollow(step)) return stepsOf([...uses, step], [...around, routine]);
        const done: ast.Step = Object.create(step);
        const isOnPiece = 'blank' in step && step.blank?.ref === routine.piece;
        if (isOnPiece) Object.defineProperty(done, 'blank', { value: blank, enumerable: true });
        followed.set(done, { routine, uses });
        return [done];
    });
}
