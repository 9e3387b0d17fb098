import type { AstNode } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { phrase } from '../../shared/recipe/phrase';
import * as ast from '../generated/ast';
import { whereOf, whereOfPart } from '../lowering/places';
import { removal, say } from './say';
import { wholeInItself } from './whole-in-itself';

/** A routine that follows itself, at once or through others, and steps in it that say too little. */
export function* routineFindings(routine: AstNode): Iterable<Finding> {
    if (!ast.isRoutine(routine)) return;
    for (const step of routine.items) {
        yield* wholeInItself(step);
        if (!ast.isFollow(step)) continue;
        const way = wayBack(step.routine?.ref, routine, []);
        if (way === undefined) continue;
        const through = way.slice(0, -1).map(({ name }) => `\`${name}\``);
        yield say('routine-cycle', {
            message: phrase`\`${routine.name}\` follows itself${through.length === 0 ? '' : phrase` through ${through.join(', ')}`}: it would never end.`,
            where: whereOfPart(step, 'routine'),
            fixes: [removal(whereOf(step), phrase`Remove this line`)],
        });
    }
}

/** The routines from one to another, both included, along the lines that follow; undefined where none leads there. */
function wayBack(from: ast.Routine | undefined, to: ast.Routine, seen: readonly ast.Routine[]): ast.Routine[] | undefined {
    if (from === undefined || seen.includes(from)) return undefined;
    if (from === to) return [to];
    for (const step of from.items) {
        const rest = ast.isFollow(step) ? wayBack(step.routine?.ref, to, [...seen, from]) : undefined;
        if (rest !== undefined) return [from, ...rest];
    }
    return undefined;
}
