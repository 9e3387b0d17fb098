import type { AstReflection, LangiumDocument, ReferenceInfo, ScopeProvider } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { isKind } from '../generated/ast';
import { whereOfCst } from '../lowering/places';
import type { KerfServices } from '../module';
import { nearest } from './nearest';
import { replaceWith, say } from './say';

/** How a kind of block is called to a maker. */
export const kindWords: Readonly<Record<string, string>> = {
    Beam: 'beam',
    Wood: 'wood',
    Abrasive: 'grit',
    Board: 'board',
    Veneer: 'veneer',
    Sheet: 'board or veneer',
    Laser: 'laser',
    Resin: 'resin',
    Sealer: 'sealer',
    Glue: 'glue',
    Coat: 'finish',
    Shop: 'shop',
    Recipe: 'recipe',
    Art: 'art',
    Blank: 'blank',
    Engrave: 'engraving',
    Cut: 'cut',
    Carved: 'step',
};

/** Names that lead nowhere. Waits for linking; a reference that is itself broken has no name to look for. */
export function* unknownNames(document: LangiumDocument, services: KerfServices): Iterable<Finding> {
    const scopes: ScopeProvider = services.references.ScopeProvider;
    const reflection: AstReflection = services.shared.AstReflection;
    for (const reference of document.references) {
        const info = reference.error?.info as ReferenceInfo | undefined;
        if (info === undefined || reference.$refNode === undefined) continue;
        const type = isKind(info.container) ? info.container.$container.$type : reflection.getReferenceType(info);
        const kind = kindWords[type] ?? 'thing';
        const name = reference.$refText;
        const where = whereOfCst(info.container, reference.$refNode);
        const all = scopes.getScope(info).getAllElements();
        const meant = nearest(
            name,
            all.map((each) => each.name),
        );
        yield say('unknown-name', {
            message: `There is no ${kind} called \`${name}\`.${meant === undefined ? '' : ` Did you mean \`${meant}\`?`}`,
            where,
            fixes: meant === undefined ? [] : [replaceWith(where, meant, `Change to \`${meant}\``, true)],
        });
    }
}
