import { type Message, phrase } from '../../shared/recipe/phrase';
/** What to say of a character that the language does not have; `text` mends it where one can tell. */
export interface OddCharacter {
    readonly message: Message;
    readonly text?: string;
}

function written(character: string, text: string): [string, () => OddCharacter] {
    return [character, () => ({ message: phrase`\`${character}\` is written \`${text.trim()}\`.`, text })];
}

function brackets(character: string): [string, () => OddCharacter] {
    return [character, () => ({ message: phrase`No \`${character}\` is needed: only { and } have a meaning.`, text: '' })];
}

const odd: ReadonlyMap<string, () => OddCharacter> = new Map([
    ...['×', '✕', '*'].map((each) => written(each, 'x')),
    ...['“', '”', '„', "'", '’', '`'].map((each) => written(each, '"')),
    ...['″', '”'].map((each) => written(each, ' in')),
    written('½', ' 1/2'),
    written('¼', ' 1/4'),
    written('¾', ' 3/4'),
    written('⅛', ' 1/8'),
    written('−', '-'),
    ...['(', ')', '[', ']', '<', '>'].map(brackets),
    ['=', () => ({ message: phrase`No \`=\` is needed: a word and its value stand side by side.`, text: '' })],
    [';', () => ({ message: phrase`No \`;\` is needed: a line ends by itself.`, text: '' })],
    ['–', () => ({ message: phrase`A range is written with \`..\`, as in \`5 .. 10 min\`.` })],
    ['—', () => ({ message: phrase`A range is written with \`..\`, as in \`5 .. 10 min\`.` })],
    ['#', () => ({ message: phrase`After \`#\` comes the id of a part of the art, or a colour such as \`#1f6f8b\`.` })],
    ['.', () => ({ message: phrase`A decimal point stands between digits, as in \`0.5\`.` })],
    ['/', () => ({ message: phrase`A fraction is written without spaces, as in \`1/16\`; a comment begins with \`//\`.` })],
]);

export function oddCharacterOf(character: string): OddCharacter {
    return odd.get(character)?.() ?? { message: phrase`\`${character}\` means nothing here.` };
}
