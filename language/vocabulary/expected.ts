import { dimensionWords } from '../../shared/quantity/dimension';
import { propertyAfter } from './lookup';

/** Which name is wanted after a word, by the kind of statement where that matters. */
const names: Readonly<Record<string, string>> = {
    on: 'the name of a blank',
    'Recipe on': 'the name of the recipe it is based on',
    'Coupon on': 'the name of a laser',
    'Run run': 'the name of a recipe',
    of: 'the name of a board or veneer',
    'Seal with': 'the name of a sealer',
    'Fill with': 'the name of a resin',
    'Finish with': 'the name of a finish',
    into: 'the name of the engraving it goes into',
    'Inlay inlay': 'the name of the engraving that is turned over',
    'Fill fill': 'the name of the engraving to fill',
    'Check check': 'the name of the step to measure',
    'Seal seal': 'the name of a blank',
    'Sand sand': 'the name of a blank',
    'Peel peel': 'the name of a blank',
    'Mask mask': 'the name of a blank',
    'Finish finish': 'the name of a blank',
    'Engrave engrave': 'a name for this step',
    'Cut cut': 'a name for this step',
    'Coupon coupon': 'the name of a board or veneer',
    'ArtUse art': 'the name of art in this recipe',
    'LaserUse laser': 'the name of a laser',
    'LaserBeam beam': 'the name of a beam',
    'SheetWood wood': 'the name of a wood',
    'GlueUse glue': 'the name of a glue',
    'Allow allow': 'the id of a rule',
    kind: 'the name of what it is like',
    currency: 'a code of three letters, such as `EUR`',
    foil: '`stops` or `fails`',
    focus: '`driven`, `by-hand` or `fixed`',
    bleed: '`yes` or `no`',
    pores: 'a word such as `ring`',
    rags: '`ignite` or `harmless`',
    'SheetMade of': 'a word such as `plywood`',
    'SheetTreated with': 'a word such as `preservative`',
    'Touched by': '`food`, `hands` or `nobody`',
    grits: 'a grit such as `120`',
};

const texts: Readonly<Record<string, string>> = {
    use: 'a path in quotes, such as `"workshop.kerf"`',
    because: 'the reason in quotes',
    do: 'what is to be done, in quotes',
    note: 'what went well or wrong, in quotes',
    caution: 'the warning in quotes',
    food: 'whose word says so, in quotes',
};

/**
 * What could have stood there, in a maker's words. `expected` are the names the parser knows,
 * `rules` the statements that were open, outermost first, `previous` the word before.
 */
export function describeExpected(expected: readonly string[], rules: readonly string[], previous: string): string {
    const rule = rules.at(-1) ?? '';
    if (expected.includes('NUMBER') || expected.includes('FRACTION')) return describeNumber(rules, previous);
    if (expected.includes('ID')) return names[`${rule} ${previous}`] ?? names[previous] ?? 'a name';
    if (expected.includes('DATE')) return 'the day, such as `2026-11-20`';
    if (expected.includes('STRING')) return texts[previous] ?? 'the path of a file, in quotes';
    if (expected.includes('HASH')) return 'a colour such as `#1f6f8b`';
    if (expected.includes('{')) return 'a { and the lines that belong to it';
    if (expected.includes('}')) return 'a }';
    return oneOf(expected);
}

function describeNumber(rules: readonly string[], previous: string): string {
    const property = propertyAfter(previous, rules);
    if (previous === '+-') return 'how far it may be off, such as `+- 0.3 mm`';
    if (property === undefined || property.measures.length === 0) return names[previous] ?? 'a number with its unit';
    const kinds = [...new Set(property.measures.map(({ dimension }) => dimensionWords[dimension].a))];
    return `${kinds.join(' or ')}, such as \`${property.example}\``;
}

export function oneOf(words: readonly string[]): string {
    const quoted = words.map((word) => `\`${word}\``);
    const last = quoted.pop();
    return quoted.length === 0 ? (last ?? 'something else') : `${quoted.join(', ')} or ${last}`;
}
