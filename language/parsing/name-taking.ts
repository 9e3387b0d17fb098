import { AstUtils, type Grammar, GrammarAST } from 'langium';
import { findNextFeatures } from 'langium/lsp';

/** The words behind which a name can stand, as the grammar has them. */
export function readNameTakingWords(grammar: Grammar): ReadonlySet<string> {
    const calls = new Map<GrammarAST.AbstractRule, GrammarAST.RuleCall[]>();
    const keywords: GrammarAST.Keyword[] = [];
    for (const node of AstUtils.streamAllContents(grammar)) {
        if (GrammarAST.isKeyword(node)) keywords.push(node);
        const rule = GrammarAST.isRuleCall(node) ? node.rule.ref : undefined;
        if (GrammarAST.isRuleCall(node) && rule !== undefined) calls.set(rule, [...(calls.get(rule) ?? []), node]);
    }
    return new Set(keywords.filter((keyword) => behind(keyword, calls).some(isName)).map(({ value }) => value));
}

/** What can come right behind a word. Words such as `made of` are a rule of their own: what follows stands behind its calls. */
function behind(
    keyword: GrammarAST.Keyword,
    calls: ReadonlyMap<GrammarAST.AbstractRule, GrammarAST.RuleCall[]>,
): GrammarAST.AbstractElement[] {
    const next = following(keyword);
    const rule = AstUtils.getContainerOfType(keyword, GrammarAST.isParserRule);
    return next.length > 0 || rule?.dataType === undefined ? next : (calls.get(rule) ?? []).flatMap(following);
}

function following(feature: GrammarAST.AbstractElement): GrammarAST.AbstractElement[] {
    return findNextFeatures([[{ feature }]], []).map((next) => next.feature);
}

function isName(feature: GrammarAST.AbstractElement): boolean {
    if (GrammarAST.isCrossReference(feature)) return true;
    return GrammarAST.isRuleCall(feature) && feature.rule.$refText === 'ID' && inRuleOf(feature) !== 'UnitName';
}

function inRuleOf(feature: GrammarAST.AbstractElement): string {
    return AstUtils.getContainerOfType(feature, GrammarAST.isParserRule)?.name ?? '';
}
