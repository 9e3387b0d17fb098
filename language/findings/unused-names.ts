import { type AstNode, AstUtils, type LangiumDocument } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { isArt, isBlank, isFile, isRecipe } from '../generated/ast';
import { whereOf, whereOfPart } from '../lowering/places';
import { removal, say } from './say';

/** Art and blanks that no step names; `adjusting` are blocks that say more of a name of a base. Stock is kept whether it is named or not; a step need not be named to be done. */
export function* unusedNames(document: LangiumDocument, adjusting: ReadonlySet<AstNode>): Iterable<Finding> {
    const file = document.parseResult.value;
    if (!isFile(file)) return;
    const named = new Set<AstNode | undefined>(
        document.references.map((reference) => ('ref' in reference ? reference.ref : undefined)),
    );
    for (const recipe of file.entries.filter(isRecipe)) {
        for (const item of recipe.items) {
            if (!(isArt(item) || isBlank(item)) || item.name === undefined || named.has(item) || adjusting.has(item)) continue;
            yield say('unused-name', {
                severity: 'hint',
                message: `No step uses \`${item.name}\`.`,
                where: whereOfPart(item, 'name'),
                fixes: [removal(whereOf(item), `Remove \`${item.name}\``)],
            });
        }
    }
}

/** The documents that some reference of this one leads into. */
export function documentsReferredTo(document: LangiumDocument): Set<LangiumDocument> {
    const into = new Set<LangiumDocument>();
    for (const reference of document.references) {
        const target = 'ref' in reference ? reference.ref : undefined;
        if (target !== undefined) into.add(AstUtils.getDocument(target));
    }
    return into;
}
