import { AstUtils, type LangiumDocument } from 'langium';
import { type Entry, isRecipe } from '../generated/ast';
import type { KerfServices } from '../services';
import { declared } from './shop-here';

/**
 * The fewest files that a new recipe has to use to see these things: one, if one sees them all, and rather a file of
 * stock than one with recipes; else those that declare them.
 */
export function neededFiles(
    nodes: readonly Entry[],
    documents: readonly LangiumDocument[],
    services: KerfServices,
): LangiumDocument[] {
    const homes = [...new Set(nodes.map((node) => AstUtils.getDocument(node)))];
    if (homes.length < 2) return homes;
    const seen = (document: LangiumDocument): LangiumDocument[] => [
        document,
        ...services.names.UsedFiles.of(document).flatMap((used) => used.document ?? []),
    ];
    const all = documents
        .map((document) => ({ document, sees: seen(document) }))
        .filter(({ sees }) => homes.every((home) => sees.includes(home)))
        .toSorted(
            (a, b) =>
                declared([a.document], isRecipe).length - declared([b.document], isRecipe).length ||
                a.sees.length - b.sees.length,
        );
    return all[0] === undefined ? homes : [all[0].document];
}

/** These files and all that they use. */
export function inSight(files: readonly LangiumDocument[], services: KerfServices): LangiumDocument[] {
    return [
        ...new Set(files.flatMap((file) => [file, ...services.names.UsedFiles.of(file).flatMap((used) => used.document ?? [])])),
    ];
}
