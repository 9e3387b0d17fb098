import { constructOf, constructs, fileWords, recipeWords } from './constructs';
import { propertiesOf } from './lookup';

/** A block as a maker would say it, from its type in the syntax tree; the file stands for what is in no block. */
export function blockPhrase(type: string): string {
    const construct = constructOf(type);
    if (construct === undefined) return 'a file';
    if (construct.where === 'step') return `\`${construct.word}\``;
    if (construct.word === 'art') return '`art`';
    return `${/^[aeiou]/.test(construct.word) ? 'an' : 'a'} ${construct.word}`;
}

/** The words with which a line of that block can begin, each as it is written. */
export function lineWords(type: string): string[] {
    if (type === 'File') return [...fileWords];
    const own = propertiesOf(type).map(({ words }) => words);
    return type === 'Recipe' ? [...own, ...recipeWords] : own;
}

/** Where a line that begins with this word would belong. */
export function homesOf(word: string): string[] {
    const first = (words: string) => words.split(' ')[0] === word;
    if (recipeWords.includes(word)) return ['Recipe'];
    if (fileWords.includes(word)) return ['File'];
    return constructs.filter(({ type }) => lineWords(type).some(first)).map(({ type }) => type);
}

export function isBlock(type: string): boolean {
    return type === 'File' || type === 'Recipe' || propertiesOf(type).length > 0;
}
