import type { AstNode } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { nearest } from '../../shared/recipe/nearest';
import { phrase } from '../../shared/recipe/phrase';
import { isAllow } from '../generated/ast';
import { whereOfPart } from '../lowering/places';
import { replaceWith, say } from './say';
import { textRuleIds } from './text-rule-ids';

/** `allow` of what is not a rule, or without a reason. `tradeRules` are the ids that can be allowed. */
export function* allowFindings(node: AstNode, tradeRules: ReadonlySet<string>): Iterable<Finding> {
    if (!isAllow(node) || node.rule === undefined) return;
    if (node.reason !== undefined && node.reason.trim() === '') {
        const message = phrase`Say why here: the next reader asks.`;
        yield say('empty-reason', { severity: 'warning', message, where: whereOfPart(node, 'reason') });
    }
    if (tradeRules.size === 0 || tradeRules.has(node.rule)) return;
    const where = whereOfPart(node, 'rule');
    if (textRuleIds.includes(node.rule)) {
        yield say('unknown-rule', {
            message: phrase`\`${node.rule}\` is about the text itself and cannot be allowed, only mended.`,
            where,
        });
        return;
    }
    const meant = nearest(node.rule, tradeRules);
    yield say('unknown-rule', {
        message: phrase`There is no rule \`${node.rule}\`.${meant === undefined ? '' : phrase` Did you mean \`${meant}\`?`}`,
        where,
        fixes: meant === undefined ? [] : [replaceWith(where, meant, phrase`Change to \`${meant}\``, true)],
    });
}
