import { DefaultFuzzyMatcher } from 'langium/lsp';

const hyphen = '-'.charCodeAt(0);
const signs = new Set([...'#./ '].map((sign) => sign.charCodeAt(0)));

/** Names here are joined by hyphens: `walnut` finds `black-walnut`, and `wing` finds `#wing`. */
export class NameMatcher extends DefaultFuzzyMatcher {
    protected override isWordTransition(previous: number, current: number): boolean {
        return (previous === hyphen && current !== hyphen) || signs.has(previous) || super.isWordTransition(previous, current);
    }
}
