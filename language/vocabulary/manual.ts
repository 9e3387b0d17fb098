import type { AstNode } from 'langium';
import { constructs } from './constructs';
import { joiningWord } from './joints';

const order = ['file', 'stock', 'recipe', 'step'] as const;

/** Headings of extension/docs/language.md with their anchors: the second heading of a word has `-1` behind it. */
const headings = order
    .flatMap((where) => constructs.filter((each) => each.where === where))
    .map(({ type, word }, index, all) => {
        const before = all.slice(0, index).filter((each) => each.word === word).length;
        const slug = word.replaceAll(' ', '-');
        return { type, word, anchor: before === 0 ? slug : `${slug}-${before}` };
    });

/** Where the manual's page of the language explains what a node is; of two words for one type the word decides. */
export function anchorOf(type: string, word?: string): string | undefined {
    const own = headings.filter((each) => each.type === type);
    return (own.find((each) => each.word === word) ?? own[0])?.anchor;
}

/** Where the manual's page of the language explains a word: its own heading, or that of the block whose table of lines has it. */
export function anchorOfWord(word: string, node: AstNode): string | undefined {
    if (joiningWord(node.$type, word) !== undefined) return 'inside-lines';
    for (let at: AstNode | undefined = node; at !== undefined; at = at.$container) {
        const anchor = at.$type === 'File' && word !== 'edition' ? undefined : anchorOf(at.$type, word);
        if (anchor !== undefined) return anchor;
    }
    return undefined;
}
