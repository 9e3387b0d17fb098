import { type AstNode, AstUtils, type ReferenceInfo, type ScopeProvider, UriUtils } from 'langium';
import type { Where } from '../../shared/quantity/where';
import type { Finding, Fix } from '../../shared/recipe/finding';
import { phrase } from '../../shared/recipe/phrase';
import { isBuiltIn } from '../built-in';
import { Blank, isRecipe } from '../generated/ast';
import { whereOfCst, whereOfPart } from '../lowering/places';
import type { KerfServices } from '../services';
import { likelyNames } from './likely-names';
import { callIt, type Mistyped } from './mistyped';
import { say } from './say';
import type { Unresolved } from './unresolved';

/** How a kind of block is called to a maker. */
export const kindWords: Readonly<Record<string, string>> = {
    Beam: 'beam',
    Wood: 'wood',
    Abrasive: 'grit',
    Board: 'board',
    Veneer: 'veneer',
    Sheet: 'board or veneer',
    Lot: 'lot',
    Laser: 'laser',
    Resin: 'resin',
    Sealer: 'sealer',
    Glue: 'glue',
    Coat: 'finish',
    Masking: 'masking',
    Shop: 'shop',
    Routine: 'routine',
    Recipe: 'recipe',
    Art: 'art',
    Blank: 'blank',
    Places: 'set of places',
    Engrave: 'engraving',
    Cut: 'cut',
    Carved: 'step',
};

/** From so many places on a name that leads nowhere is said once, at the first of them; earlier if its declaration is mistyped. */
const several = 3;

/** Names that lead nowhere. What a broken line may have declared is left to the line's own finding. */
export function* unknownNames(
    all: readonly Unresolved[],
    mistyped: Mistyped,
    isLost: (name: string) => boolean,
    services: KerfServices,
): Iterable<Finding> {
    const declared = new Map([...mistyped].map(([node, unresolved]) => [unresolved, node]));
    for (const unresolved of all) {
        if (isLost(unresolved.name)) continue;
        const declaration = declared.get(unresolved);
        const places = unresolved.uses.map(({ container, reference }) => whereOfCst(container, reference.$refNode));
        const together = places.length >= several || declaration !== undefined;
        const groups = together ? [places] : places.map((place) => [place]);
        for (const group of groups) yield unknownName(unresolved, group, declaration, services);
    }
}

function unknownName(
    unresolved: Unresolved,
    places: readonly Where[],
    declaration: AstNode | undefined,
    services: KerfServices,
): Finding {
    const { type, name, uses } = unresolved;
    const scopes: ScopeProvider = services.references.ScopeProvider;
    const [first] = uses;
    const names = scopes.getScope(first!).getAllElements();
    const known = [...new Set(names.map((each) => each.name))];
    const under = type === Blank.$type ? blankUnder(name, first!) : undefined;
    const slip = declaration === undefined ? undefined : (declaration as { name?: string }).name;
    const only = under ?? slip;
    const likely = only === undefined ? likelyNames(name, known) : [only];
    const meantThing = declaration ?? (likely.length === 1 ? scopes.getScope(first!).getElement(likely[0]!)?.node : undefined);
    const file = meantThing && fileOfOther(meantThing, first!);
    const help =
        under !== undefined
            ? phrase` \`${name}\` is a step on \`${under}\`: did you mean \`${under}\`?`
            : declaration !== undefined && file !== undefined
              ? phrase` ${file} has \`${slip}\`: did you mean that, or is it mistyped there?`
              : helpWith(type, name, likely, known, file);
    const count = places.length > 1 ? phrase`, and ${places.length} places name it` : '';
    const [where, ...others] = places;
    const rename = declaration === undefined ? [] : [callIt(declaration, unresolved, file)];
    const related = others.map((place) => ({ message: phrase`It is named here, too.`, where: place }));
    if (meantThing !== undefined && (declaration !== undefined || file !== undefined))
        related.push(declaredHere(meantThing, likely[0]!, file));
    const preferred = likely.length === 1 && (declaration === undefined || places.length === 1);
    const changes = likely.map((meant) => changeTo(meant, places, preferred));
    return say('unknown-name', {
        message: phrase`There is no ${kindWords[type] ?? 'thing'} called \`${name}\`${count}.${help}`,
        where: where!,
        related,
        fixes: places.length > 1 ? [...rename, ...changes] : [...changes, ...rename],
    });
}

function declaredHere(node: AstNode, name: string, file: string | undefined): Finding['related'][number] {
    const message =
        file === undefined ? phrase`Declared here, and nobody uses that name.` : phrase`\`${name}\` is declared here.`;
    return { message, where: whereOfPart(node, 'name') };
}

function changeTo(meant: string, places: readonly Where[], preferred: boolean): Fix {
    const which = places.length === 1 ? '' : places.length === 2 ? phrase`both ` : phrase`all ${places.length} `;
    return {
        title: phrase`Change ${which}to \`${meant}\``,
        changes: places.map((place) => ({ do: 'replace', where: place, text: meant })),
        ...(preferred && { preferred }),
    };
}

/** The file of a declaration, as it is called from where it is missed; undefined where it is the same file. */
function fileOfOther(declaration: AstNode, { container }: ReferenceInfo): string | undefined {
    const [there, here] = [declaration, container].map((node) => AstUtils.getDocument(node).uri);
    return UriUtils.equals(there, here) || isBuiltIn(there!.toString())
        ? undefined
        : UriUtils.relative(UriUtils.dirname(here!), there!);
}

/** Kinds that a maker can add to in a file of their own. */
const stockWords = new Set([
    'wood',
    'board',
    'veneer',
    'laser',
    'resin',
    'sealer',
    'glue',
    'finish',
    'masking',
    'beam',
    'abrasive',
]);
const fewEnoughToTell = 6;

function helpWith(
    type: string,
    name: string,
    likely: readonly string[],
    known: readonly string[],
    from: string | undefined,
): string {
    if (likely.length > 0) return phrase` Did you mean ${either(likely)}${from === undefined ? '' : phrase` of ${from}`}?`;
    const word = kindWords[type] ?? '';
    const those =
        known.length > 0 && known.length <= fewEnoughToTell ? phrase` Known here: ${known.map(quoted).join(', ')}.` : '';
    return stockWords.has(word) ? phrase`${those} One of your own is declared with \`${word} ${name} { … }\`.` : those;
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
    return names.length === 1 ? last : phrase`${names.slice(0, -1).map(quoted).join(', ')} or ${last}`;
}

function quoted(name: string): string {
    return `\`${name}\``;
}
