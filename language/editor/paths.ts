import { AstUtils, GrammarUtils, type URI } from 'langium';
import { type Art, type File, isArt, isFile, isRecipe, type Use } from '../generated/ast';
import { resolvePath } from '../names/used-files';

/** A path written in quotes, and the file it leads to. */
export interface WrittenPath {
    /** What stands between the quotes. */
    readonly offset: number;
    readonly end: number;
    readonly target: URI;
    readonly kind: 'art' | 'recipe';
}

/** All paths of a file: what it uses, and the art of its recipes. */
export function pathsIn(file: File | undefined): WrittenPath[] {
    if (!isFile(file)) return [];
    const from = AstUtils.getDocument(file).uri;
    const holders: (Use | Art)[] = [
        ...file.uses,
        ...file.entries.filter(isRecipe).flatMap((recipe) => recipe.items.filter(isArt)),
    ];
    return holders.flatMap((holder) => {
        const cst = GrammarUtils.findNodeForProperty(holder.$cstNode, 'path');
        const target = resolvePath(holder.path, from);
        if (cst === undefined || target === undefined || cst.length < 2) return [];
        return [
            { offset: cst.offset + 1, end: cst.end - 1, target, kind: isArt(holder) ? ('art' as const) : ('recipe' as const) },
        ];
    });
}
