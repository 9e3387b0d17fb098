import { dimensionWords } from '../../shared/quantity/dimension';
import { withoutEarlierSpellings } from './editions';
import { comesBehind } from './joints';
import { propertyAfter } from './lookup';
import type { Property } from './property';

/**
 * What could have stood there, in a maker's words. `expected` are the names the parser knows,
 * `rules` the statements that were open, outermost first, `previous` the word before.
 */
export function describeExpected(expected: readonly string[], rules: readonly string[], previous: string): string {
    const behind = comesBehind(rules.at(-1) ?? '', previous) ?? behindLine(propertyAfter(previous, rules));
    if (expected.includes('NUMBER') || expected.includes('FRACTION'))
        return describeNumber(propertyAfter(previous, rules), previous, behind);
    if (expected.includes('ID')) return behind ?? 'a name';
    if (expected.includes('DATE')) return 'the day, such as `2026-11-20`';
    if (expected.includes('MARK')) return 'the fingerprint of a plan, six digits (0 to 9, a to f) or more, such as `7f3c2a91`';
    if (expected.includes('STRING')) return behind ?? 'the path of a file, in quotes';
    if (expected.includes('HASH')) return 'a colour such as `#1f6f8b`';
    if (expected.includes('{')) return 'a { and the lines that belong to it';
    if (expected.includes('}')) return 'a }';
    return oneOf(withoutEarlierSpellings(expected));
}

/** What a line of the vocabulary wants behind its words: what it says itself, or the words among which it chooses. */
function behindLine(property: Property | undefined): string | undefined {
    if (property === undefined || property.follows !== undefined) return property?.follows;
    const { choices } = property;
    if (choices.length === 0) return undefined;
    return choices.length <= fewChoices ? oneOf(choices) : `a word such as \`${property.example.split(' ').at(-1)}\``;
}

const fewChoices = 3;

function describeNumber(property: Property | undefined, previous: string, behind: string | undefined): string {
    if (previous === '+-') return 'how far it may be off, such as `+- 0.3 mm`';
    if (property === undefined || property.measures.length === 0) return behind ?? 'a number with its unit';
    const kinds = [...new Set(property.measures.map(({ dimension }) => dimensionWords[dimension].a))];
    return `${kinds.join(' or ')}, such as \`${property.example}\``;
}

export function oneOf(words: readonly string[]): string {
    const quoted = words.map((word) => `\`${word}\``);
    const last = quoted.pop();
    return quoted.length === 0 ? (last ?? 'something else') : `${quoted.join(', ')} or ${last}`;
}
