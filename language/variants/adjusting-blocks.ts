import type { AstNode, LangiumDocument } from 'langium';
import { KeptOn } from '../../shared/plan/kept';
import * as ast from '../generated/ast';
import { standsOnNothing } from './lineage';
import { linesOfBase } from './merge';

const known = new KeptOn<object, ReadonlySet<AstNode>>();

/** The blocks of a document that only adjust one of a base: they need not be whole. Needs a linked document. */
export function adjustingBlocks(document: LangiumDocument): ReadonlySet<AstNode> {
    // Relinking replaces the list of references, so it stands for this state of the document.
    const before = known.get(document.references);
    if (before !== undefined) return before;
    const found = new Set<AstNode>();
    const file = document.parseResult.value;
    for (const recipe of ast.isFile(file) ? file.entries.filter(ast.isRecipe) : []) {
        // Where a base is not there, nobody knows what it has.
        if (standsOnNothing(recipe)) for (const item of recipe.items) found.add(item);
        const base = recipe.base === undefined ? undefined : linesOfBase(recipe);
        for (const item of base === undefined ? [] : recipe.items) {
            // A step that the base does not have has been reported as such.
            if (ast.isStep(item) || base?.saidBy(item)[0] !== undefined) found.add(item);
        }
    }
    known.set(document.references, found);
    return found;
}
