import type { AstNode } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { phrase } from '../../shared/recipe/phrase';
import { isKind, type Kind } from '../generated/ast';
import { whereOf } from '../lowering/places';
import { say } from './say';

/** `kind` that leads back to where it began: none of them says anything of its own. */
export function* kindCycles(node: AstNode): Iterable<Finding> {
    if (!isKind(node)) return;
    const start: AstNode = node.$container;
    const seen = new Set<AstNode>();
    let next: AstNode | undefined = node.base?.ref;
    while (next !== undefined && next !== start && !seen.has(next)) {
        seen.add(next);
        next = ((next as { items?: readonly AstNode[] }).items?.find(isKind) as Kind | undefined)?.base?.ref;
    }
    if (next !== start) return;
    yield say('kind-cycle', {
        message: phrase`This kind leads back to itself: one of them has to say its own figures.`,
        where: whereOf(node),
    });
}
