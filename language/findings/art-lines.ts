import { type AstNode, GrammarUtils } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { isArtUse, isShape } from '../generated/ast';
import { whereOf, whereOfCst } from '../lowering/places';
import { placesOfLine } from './places';
import { removal, say } from './say';

/** The clauses of such a line, each with the parts of the tree that it gives. */
const clauses = { inverse: ['boundary'], at: ['at', 'places'], turned: ['turn'], repeat: ['repeat'] } as const;

/** What is picked without commas, and what one line of art says twice. */
export function* artLineFindings(node: AstNode): Iterable<Finding> {
    if (!isArtUse(node) && !isShape(node)) return;
    for (const [word, parts] of Object.entries(clauses)) {
        const [first, ...more] = parts
            .flatMap((part) => GrammarUtils.findNodesForProperty(node.$cstNode, part))
            .sort((a, b) => a.offset - b.offset);
        for (const again of more) {
            yield say('duplicate-property', {
                message: `\`${word}\` stands twice in this line: the last one counts.`,
                where: whereOfCst(node, again),
                related: [{ message: 'It is said here, too.', where: whereOfCst(node, first) }],
                fixes: [removal(whereOf(node), 'Remove this line')],
            });
        }
    }
    yield* placesOfLine(node);
    if (isArtUse(node)) for (const part of ['picks', 'leaves'] as const) yield* sideBySide(node, part);
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
        message: `${named(before.text)} and ${named(pick.text)} are both burnt, as if a comma stood between them: write \`${before.text}, ${pick.text}\`.`,
        where: whereOfCst(node, pick),
        fixes: [
            {
                title: 'Write commas between them',
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
