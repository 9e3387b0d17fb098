import { type AstNode, AstUtils, type LangiumDocument, type ScopeProvider } from 'langium';
import type { Fix } from '../../shared/recipe/finding';
import { nearest } from '../../shared/recipe/nearest';
import { phrase } from '../../shared/recipe/phrase';
import { whereOfPart } from '../lowering/places';
import type { KerfServices } from '../services';
import type { Unresolved } from './unresolved';

/** Declarations that nobody in their file uses, each with the name that leads nowhere and most likely means it. */
export type Mistyped = ReadonlyMap<AstNode, Unresolved>;

/** Where a declaration and its uses differ by a slip, the two sides are brought together. Built-in stock is never mistyped. */
export function mistypedDeclarations(
    unresolved: readonly Unresolved[],
    document: LangiumDocument,
    services: KerfServices,
): Mistyped {
    const found = new Map<AstNode, Unresolved>();
    if (unresolved.length === 0) return found;
    const scopes: ScopeProvider = services.references.ScopeProvider;
    const near = [document, ...services.names.UsedFiles.of(document).flatMap((used) => used.document ?? [])];
    const named = new Set(near.flatMap(({ references }) => references.map((each) => ('ref' in each ? each.ref : undefined))));
    for (const each of unresolved) {
        const free = new Map<string, AstNode>();
        for (const { name, node } of scopes.getScope(each.uses[0]!).getAllElements()) {
            if (node !== undefined && !named.has(node) && near.includes(AstUtils.getDocument(node))) free.set(name, node);
        }
        const meant = nearest(each.name, free.keys());
        if (meant !== undefined) found.set(free.get(meant)!, each);
    }
    return found;
}

/** Gives a declaration the name by which it is used. */
export function callIt(node: AstNode, { name, uses }: Unresolved, file?: string): Fix {
    return {
        title: phrase`Call it \`${name}\` ${file === undefined ? phrase`where it is declared` : phrase`in ${file}`}`,
        changes: [{ do: 'replace', where: whereOfPart(node, 'name'), text: name }],
        ...(uses.length > 1 && { preferred: true }),
    };
}
