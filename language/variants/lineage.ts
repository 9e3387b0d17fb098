import type * as ast from '../generated/ast';

/** A recipe stands on so many others at most; who goes further has lost the thread. */
export const longestLine = 8;

/** What a recipe is based on, nearest first. A circle ends where it closes, a base that is not there ends the line. */
export function basesOf(recipe: ast.Recipe): ast.Recipe[] {
    const line: ast.Recipe[] = [];
    for (let base = recipe.base?.ref; base !== undefined && base !== recipe && !line.includes(base); base = base.base?.ref) {
        if (line.length >= longestLine) break;
        line.push(base);
    }
    return line;
}

/** Whether a recipe or one it stands on is based on a recipe that is not there. */
export function standsOnNothing(recipe: ast.Recipe): boolean {
    return [recipe, ...basesOf(recipe)].some(({ base }) => base !== undefined && base.ref === undefined);
}
