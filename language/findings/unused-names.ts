import { type AstNode, AstUtils, type LangiumDocument } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { phrase } from '../../shared/recipe/phrase';
import { isArt, isBlank, isFile, isPlaces, isRecipe } from '../generated/ast';
import { whereOf, whereOfCst, whereOfPart } from '../lowering/places';
import { callIt, type Mistyped } from './mistyped';
import { removal, say } from './say';
import type { Unresolved } from './unresolved';

/** Art, blanks and places that no step names; `adjusting` are blocks that say more of a name of a base. Stock is kept whether it is named or not; a step need not be named to be done. */
export function* unusedNames(document: LangiumDocument, adjusting: ReadonlySet<AstNode>, mistyped: Mistyped): Iterable<Finding> {
    for (const [node, unresolved] of mistyped) if (AstUtils.getDocument(node) === document) yield mistypedName(node, unresolved);
    const file = document.parseResult.value;
    if (!isFile(file)) return;
    const named = new Set<AstNode | undefined>(
        document.references.map((reference) => ('ref' in reference ? reference.ref : undefined)),
    );
    for (const recipe of file.entries.filter(isRecipe)) {
        for (const item of recipe.items) {
            if (
                !(isArt(item) || isBlank(item) || isPlaces(item)) ||
                item.name === undefined ||
                named.has(item) ||
                adjusting.has(item)
            )
                continue;
            if (mistyped.has(item)) continue;
            yield say('unused-name', {
                severity: 'hint',
                message: phrase`No step uses \`${item.name}\`.`,
                where: whereOfPart(item, 'name'),
                fixes: [removal(whereOf(item), phrase`Remove \`${item.name}\``)],
            });
        }
    }
}

function mistypedName(node: AstNode, unresolved: Unresolved): Finding {
    const { name, uses } = unresolved;
    const times = uses.length === 1 ? 'once' : phrase`${uses.length} times`;
    return say('unused-name', {
        severity: 'hint',
        message: phrase`Nothing uses \`${(node as { name?: string }).name}\`, but \`${name}\` is named ${times} and declared nowhere.`,
        where: whereOfPart(node, 'name'),
        related: uses.map(({ container, reference }) => ({
            message: phrase`It is named here.`,
            where: whereOfCst(container, reference.$refNode),
        })),
        fixes: [callIt(node, unresolved)],
    });
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
