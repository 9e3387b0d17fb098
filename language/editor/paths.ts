import { AstUtils, GrammarUtils, type URI } from 'langium';
import { type Art, type File, isArt, isFile, isRecipe, isRun, isTrait, type Trait, type Use } from '../generated/ast';
import { resolvePath } from '../names/used-files';
import { isLine } from '../vocabulary/lookup';

/** A path written in quotes, and the file it leads to. */
export interface WrittenPath {
    /** What stands between the quotes. */
    readonly offset: number;
    readonly end: number;
    readonly target: URI;
    readonly kind: 'art' | 'recipe' | 'photo';
}

/** All paths of a file: what it uses, the art of its recipes, and the photos of its runs. */
export function pathsIn(file: File | undefined): WrittenPath[] {
    if (!isFile(file)) return [];
    const from = AstUtils.getDocument(file).uri;
    const arts = file.entries.filter(isRecipe).flatMap((recipe) => recipe.items.filter(isArt));
    const photos = file.entries.filter(isRun).flatMap((run) => run.items.filter(isTrait).filter((line) => isLine(line, 'photo')));
    const written = (holder: Use | Art | Trait, kind: WrittenPath['kind']): WrittenPath[] => {
        const cst = GrammarUtils.findNodeForProperty(holder.$cstNode, kind === 'photo' ? 'value' : 'path');
        const target = resolvePath(isTrait(holder) ? holder.value : holder.path, from);
        return cst === undefined || target === undefined || cst.length < 2
            ? []
            : [{ offset: cst.offset + 1, end: cst.end - 1, target, kind }];
    };
    return [
        ...file.uses.flatMap((use) => written(use, 'recipe')),
        ...arts.flatMap((art) => written(art, 'art')),
        ...photos.flatMap((photo) => written(photo, 'photo')),
    ];
}
