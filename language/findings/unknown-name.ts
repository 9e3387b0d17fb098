import { type AstReflection, AstUtils, type LangiumDocument, type ReferenceInfo, type ScopeProvider } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { Blank, isKind, isRecipe } from '../generated/ast';
import { whereOfCst } from '../lowering/places';
import type { KerfServices } from '../module';
import { likelyNames } from './likely-names';
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
        const known = [
            ...new Set(
                scopes
                    .getScope(info)
                    .getAllElements()
                    .map((each) => each.name),
            ),
        ];
        const under = type === Blank.$type ? blankUnder(name, info) : undefined;
        const likely = under === undefined ? likelyNames(name, known) : [under];
        const help =
            under === undefined
                ? helpWith(type, name, likely, known)
                : ` \`${name}\` is a step on \`${under}\`: did you mean \`${under}\`?`;
        yield say('unknown-name', {
            message: `There is no ${kind} called \`${name}\`.${help}`,
            where,
            fixes: likely.map((meant) => replaceWith(where, meant, `Change to \`${meant}\``, likely.length === 1)),
        });
    }
}

/** Kinds that a maker can add to in a file of their own. */
const stockWords = new Set(['wood', 'board', 'veneer', 'laser', 'resin', 'sealer', 'glue', 'finish', 'beam', 'abrasive']);
const fewEnoughToTell = 6;

function helpWith(type: string, name: string, likely: readonly string[], known: readonly string[]): string {
    if (likely.length > 0) return ` Did you mean ${either(likely)}?`;
    const word = kindWords[type] ?? '';
    const those = known.length > 0 && known.length <= fewEnoughToTell ? ` Known here: ${known.map(quoted).join(', ')}.` : '';
    return stockWords.has(word) ? `${those} One of your own is declared with \`${word} ${name} { … }\`.` : those;
}

/** The blank that a step of this name is done on: a step was named where its blank is asked for. */
function blankUnder(name: string, info: ReferenceInfo): string | undefined {
    const recipe = AstUtils.getContainerOfType(info.container, isRecipe);
    for (const item of recipe?.items ?? []) {
        if ('name' in item && item.name === name && 'blank' in item) return item.blank?.$refText;
    }
    return undefined;
}

function either(names: readonly string[]): string {
    const last = quoted(names.at(-1)!);
    return names.length === 1 ? last : `${names.slice(0, -1).map(quoted).join(', ')} or ${last}`;
}

function quoted(name: string): string {
    return `\`${name}\``;
}
