import { type CstNode, isCompositeCstNode, isLeafCstNode } from 'langium';

/** A piece of the text as its words alone: comments, blanks and line breaks do not count. */
export function writtenForm(cst: CstNode | undefined): string {
    const words: string[] = [];
    const collect = (node: CstNode): void => {
        if (isLeafCstNode(node)) {
            if (!node.hidden) words.push(node.text);
        } else if (isCompositeCstNode(node)) for (const each of node.content) collect(each);
    };
    if (cst !== undefined) collect(cst);
    return words.join(' ');
}
