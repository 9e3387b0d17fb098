import { type AstNode, type CstNode, GrammarUtils } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { phrase } from '../../shared/recipe/phrase';
import { clausesOf } from '../editing/line-clauses';
import { isArtUse, isCircle, isShape, type Shape } from '../generated/ast';
import { whereOf, whereOfCst } from '../lowering/places';
import { placesOfLine } from './places';
import { removal, say } from './say';

/** What is picked without commas, and what one line of art says twice. */
export function* artLineFindings(node: AstNode): Iterable<Finding> {
    if (!isArtUse(node) && !isShape(node)) return;
    yield* clausesTwice(node);
    yield* placesOfLine(node);
    if (isShape(node)) yield* turnedForNothing(node);
    if (isArtUse(node)) for (const part of ['picks', 'leaves'] as const) yield* sideBySide(node, part);
}

/** Clauses that one line says twice. */
export function* clausesTwice(node: AstNode): Iterable<Finding> {
    const first = new Map<string, CstNode>();
    for (const { word, parts } of clausesOf(node).clauses) {
        const [head] = parts;
        const earlier = first.get(word);
        if (earlier === undefined) first.set(word, head!);
        else {
            yield say('duplicate-property', {
                message: phrase`\`${word}\` stands twice in this line: the last one counts.`,
                where: whereOfCst(node, parts[1] ?? head),
                related: [{ message: phrase`It is said here, too.`, where: whereOfCst(node, earlier) }],
                fixes: [removal(whereOf(node), phrase`Remove this line`)],
            });
        }
    }
}

/** A circle that is turned: each copy turns about its own middle, so that nothing comes of it. */
function* turnedForNothing(node: Shape): Iterable<Finding> {
    if (node.turn === undefined || !isCircle(node.outline)) return;
    const clause = clausesOf(node).clauses.find(({ word }) => word === 'turned')?.parts;
    const offset = clause?.[0]?.offset;
    if (clause === undefined || offset === undefined) return;
    const where = { ...whereOf(node), offset, length: (clause.at(-1)?.end ?? offset) - offset };
    yield say('contradiction', {
        severity: 'warning',
        message: phrase`A circle is the same however it is turned: leave out \`turned\`.`,
        where,
        fixes: [removal(where, phrase`Leave out \`turned\``)],
    });
}

function* sideBySide(node: AstNode & { picks: string[]; leaves: string[] }, part: 'picks' | 'leaves'): Iterable<Finding> {
    const all = GrammarUtils.findNodesForProperty(node.$cstNode, part);
    const missing = all.slice(1).flatMap((pick, index) => {
        const before = all[index]!;
        const text = node.$cstNode?.root.fullText.slice(before.end, pick.offset) ?? '';
        return text.includes(',') ? [] : [{ before, pick }];
    });
    const [first] = missing;
    if (first === undefined) return;
    const { before, pick } = first;
    const named = (name: string) => `\`${name}\``;
    yield say('picks', {
        severity: 'warning',
        message: phrase`${named(before.text)} and ${named(pick.text)} are both burnt, as if a comma stood between them: write \`${before.text}, ${pick.text}\`.`,
        where: whereOfCst(node, pick),
        fixes: [
            {
                title: phrase`Write commas between them`,
                preferred: true,
                changes: missing.map(({ before, pick }) => ({
                    do: 'replace' as const,
                    where: { ...whereOfCst(node, before), offset: before.end, length: pick.offset - before.end },
                    text: ', ',
                })),
            },
        ],
    });
}
