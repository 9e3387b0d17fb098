import { constructOf, constructs, fileWords, recipeWords, routineWords, stepWords } from './constructs';
import { propertiesOf } from './lookup';

/** A block as a maker would say it, from its type in the syntax tree; the file stands for what is in no block. */
export function blockPhrase(type: string): string {
    const construct = constructOf(type);
    if (construct === undefined || type === 'File') return 'a file';
    if (construct.where === 'step') return `\`${construct.word}\``;
    if (construct.word === 'art') return '`art`';
    return `${/^[aeiou]/.test(construct.word) ? 'an' : 'a'} ${construct.word}`;
}

/** The words with which a line of that block can begin, each as it is written. */
export function lineWords(type: string): string[] {
    if (type === 'File') return [...fileWords];
    if (type === 'Inserted') return [...stepWords];
    if (type === 'Routine') return [...routineWords];
    const own = propertiesOf(type).map(({ words }) => words);
    return type === 'Recipe' ? [...own, ...recipeWords] : own;
}

/** Where a line that begins with this word would belong, likeliest first. */
export function homesOf(word: string): readonly string[] {
    return homes.get(word) ?? [];
}

const homes = new Map<string, string[]>();
const rest = constructs
    .map((each) => each.type)
    .filter((each) => each !== 'Recipe' && each !== 'Inserted' && each !== 'Routine' && each !== 'File');
for (const type of ['Recipe', ...rest, 'File']) {
    const earlier = propertiesOf(type).flatMap(({ before }) => before ?? []);
    for (const words of [...lineWords(type), ...earlier]) {
        const first = words.split(' ')[0]!;
        homes.set(first, [...(homes.get(first) ?? []), type]);
    }
}

/** Whether a part of a recipe or a step that begins with `head` can hold a line that begins with `word`. */
export function canStandIn(head: string, word: string): boolean {
    const types = constructs.filter((each) => each.word === head && each.where !== 'file').map(({ type }) => type);
    return types.some((type) => homesOf(word).includes(type));
}

/** Whether any block that begins with `head` can hold a line that begins with `word`. */
export function isLineOf(head: string, word: string): boolean {
    return constructs.some((each) => each.word === head && homesOf(word).includes(each.type));
}

export function isBlock(type: string): boolean {
    return type === 'File' || type === 'Recipe' || type === 'Inserted' || type === 'Routine' || propertiesOf(type).length > 0;
}
