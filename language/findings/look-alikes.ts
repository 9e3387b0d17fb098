import type { AstNode } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { phrase } from '../../shared/recipe/phrase';
import { whereOfPart } from '../lowering/places';
import { replaceWith, say } from './say';

const latin = /[A-Za-z]/;
const otherAlphabet = /[\u0370-\u03FF\u0400-\u04FF]/;

/** Greek and Cyrillic letters that are drawn as Latin ones. */
const drawnAs: ReadonlyMap<string, string> = new Map(
    [...'аaсcеeоoрpхxуyіiјjѕsАAВBЕEКKМMНHОOРPСCТTХX', ...'οoαaνvΑAΒBΕEΖZΗHΙIΚKΜMΝNΟOΡPΤTΥYΧX'].flatMap(
        (letter, index, all): [string, string][] => (index % 2 === 0 ? [[letter, all[index + 1]!]] : []),
    ),
);

/** A declared name in letters of two alphabets. */
export function* lookAlikes(node: AstNode): Iterable<Finding> {
    const { name } = node as { name?: unknown };
    if (typeof name !== 'string' || !latin.test(name) || !otherAlphabet.test(name)) return;
    const strange = [...name].filter((letter) => otherAlphabet.test(letter));
    const plain = [...name].map((letter) => drawnAs.get(letter) ?? letter).join('');
    const where = whereOfPart(node, 'name');
    yield say('look-alike', {
        severity: 'hint',
        message: phrase`\`${name}\` mixes two alphabets: ${strange.map((letter) => `\`${letter}\``).join(', ')} ${strange.length === 1 ? phrase`is no Latin letter` : phrase`are no Latin letters`}. Type the name again in one.`,
        where,
        fixes: otherAlphabet.test(plain) ? [] : [replaceWith(where, plain, phrase`Call it \`${plain}\` in Latin letters`)],
    });
}
