import { type AstNode, type AstReflection, AstUtils, type LangiumDocument, type ReferenceInfo } from 'langium';
import { isKind, isRecipe, isRoutine, isRun, isStep, type Recipe, type Routine } from '../generated/ast';
import type { KerfLexingReport } from '../parsing/lexer';
import type { KerfServices } from '../services';
import { standsOnNothing } from '../variants/lineage';
import { wordMeant } from './stray-words';

/** One name that leads nowhere, with all its places in one file that miss the same thing. */
export interface Unresolved {
    /** Type of what is looked for. */
    readonly type: string;
    readonly name: string;
    /** In the order of the text; there is at least one. */
    readonly uses: readonly ReferenceInfo[];
}

/** Kinds that belong to a recipe: the same name in two recipes means two things. */
const ownKinds = new Set(['Art', 'Blank', 'Places', 'Engrave', 'Carved']);

/**
 * The names of a linked document that lead nowhere. What is missing only because the recipe that it would
 * come from is not there is left out, and so is a reference that is itself broken.
 */
export function unresolvedNames(document: LangiumDocument, services: KerfServices): Unresolved[] {
    const reflection: AstReflection = services.shared.AstReflection;
    const found = new Map<string, { type: string; name: string; uses: ReferenceInfo[] }>();
    const owners = new Map<AstNode | undefined, number>();
    for (const reference of document.references) {
        const info = reference.error?.info as ReferenceInfo | undefined;
        if (info === undefined || reference.$refNode === undefined) continue;
        if (isConsequence(info) || wordMeant(info) !== undefined) continue;
        const type = isKind(info.container) ? info.container.$container.$type : reflection.getReferenceType(info);
        const owner = ownKinds.has(type) ? ownerOf(info.container) : undefined;
        if (!owners.has(owner)) owners.set(owner, owners.size);
        // An engraving and a step of the same name would be mended by one and the same declaration.
        const kind = type === 'Engrave' ? 'Carved' : type;
        const key = `${kind} ${owners.get(owner)} ${reference.$refText}`;
        const known = found.get(key);
        // As it is written: a grit is read as a number, and one that is far too large would be called Infinity.
        if (known === undefined) found.set(key, { type, name: reference.$refNode.text, uses: [info] });
        else {
            known.uses.push(info);
            // Where one use can be of an engraving alone, that is what is missed.
            if (type === 'Engrave') known.type = type;
        }
    }
    return [...found.values()];
}

/** Whose part is meant: the recipe or routine around a line, or the recipe that a run is of. */
function ownerOf(node: AstNode): Recipe | Routine | undefined {
    const routine = AstUtils.getContainerOfType(node, isRoutine);
    if (routine !== undefined) return routine;
    return AstUtils.getContainerOfType(node, isRun)?.recipe?.ref ?? AstUtils.getContainerOfType(node, isRecipe);
}

/** Whether a name could only be found in a recipe that is not there: the one that a run is of, or that a variant stands on. */
function isConsequence({ container }: ReferenceInfo): boolean {
    const run = AstUtils.getContainerOfType(container, isRun);
    if (run !== undefined) return run !== container && (run.recipe?.ref === undefined || isUnread(run.recipe.ref));
    const recipe = AstUtils.getContainerOfType(container, isRecipe);
    return recipe !== undefined && recipe !== container && standsOnNothing(recipe);
}

/** A recipe of which no step could be read, since its first line is torn: what its runs name is not there. */
function isUnread(recipe: Recipe): boolean {
    if (recipe.base !== undefined || recipe.items.some(isStep)) return false;
    const { parserErrors, lexerReport } = AstUtils.getDocument(recipe).parseResult;
    const { open = [] } = (lexerReport as Partial<KerfLexingReport> | undefined) ?? {};
    return parserErrors.length > 0 || open.length > 0;
}
