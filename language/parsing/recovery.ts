import { type CstNodeBuilder, type LangiumCoreServices, type LangiumParser, prepareLangiumParser } from 'langium';
import { canBeName, isMadeUp, isWord, mostErrors, startsStatement, type Token, wordType } from './token';

type TokenType = Token['tokenType'];
/** A place in the grammar: the rules that are open, and the last token that was read. */
interface GrammarPath {
    readonly ruleStack: readonly string[];
    readonly occurrenceStack: readonly number[];
    readonly lastTok: TokenType;
    readonly lastTokOccurrence: number;
}
type Loop = (...args: unknown[]) => void;

/** The part of the parser engine that decides how to go on after an error. */
interface Engine {
    readonly _errors: readonly unknown[];
    LA(ahead: number): Token;
    SKIP_TOKEN(): Token;
    consumeToken(): void;
    moveToTerminatedState(): void;
    exportLexerState(): number;
    importLexerState(state: number): void;
    /** The rules that are open, outermost first, and what can follow each where it was called. */
    buildFullFollowKeyStack(): unknown[];
    getFollowSetFromFollowKey(key: unknown): TokenType[];
    getTokenToInsert(expected: TokenType): Token;
    consumeInternal(expected: TokenType, occurrence: number, options: unknown): Token;
    getFollowsForInRuleRecovery(expected: TokenType, occurrence: number): TokenType[];
    /** Saves and throws the error that `expected` is missing. */
    consumeInternalError(expected: TokenType, actual: Token): void;

    /** Walks the grammar for what can come next. */
    getNextPossibleTokenTypes(path: GrammarPath): TokenType[];
    tryInRuleRecovery(expected: TokenType, follows: TokenType[]): Token;
    canPerformInRuleRecovery(expected: TokenType, follows: TokenType[]): boolean;
    findReSyncTokenType(): TokenType;
    reSyncTo(type: TokenType): Token[];
    tryInRepetitionRecovery(loop: Loop, args: unknown[], starts: () => boolean, expected: TokenType): void;
}

/**
 * A parser that goes on after an error at the next line, never in the middle of one, and never
 * leaves or enters a block by guessing: braces pair already when they come here (structure.ts).
 */
export function createKerfParser(services: LangiumCoreServices): LangiumParser {
    const parser = prepareLangiumParser(services);
    recoverByLine((parser as unknown as { wrapper: Engine }).wrapper);
    measureByPlace(parser as unknown as { nodeBuilder: CstNodeBuilder });
    parser.finalize();
    const parse = parser.parse.bind(parser);
    parser.parse = (...args: Parameters<typeof parse>) => {
        try {
            return withoutTraces(() => parse(...args)) as never;
        } finally {
            letGo(parser as unknown as Holding);
        }
    };
    return parser;
}

/** What a parser keeps of the text that it read last: tokens, tree and all that the tree leads to. */
interface Holding {
    readonly wrapper: { input: readonly unknown[] };
    readonly nodeBuilder: { rootNode?: unknown; nodeStack: unknown[] };
}

/** It would hold them until the next text, be the document long closed. */
function letGo({ wrapper, nodeBuilder }: Holding): void {
    wrapper.input = [];
    nodeBuilder.nodeStack = [];
    delete nodeBuilder.rootNode;
}

/** What a line break has torn apart is longer in the text than its image. */
function measureByPlace({ nodeBuilder }: { nodeBuilder: CstNodeBuilder }): void {
    const build = nodeBuilder.buildLeafNode.bind(nodeBuilder);
    nodeBuilder.buildLeafNode = (token, feature) => {
        const length = (token.endOffset ?? 0) + 1 - token.startOffset;
        const node = build(token, feature);
        return length > token.image.length ? Object.assign(node, { _length: length }) : node;
    };
}

/** Each error of a broken text is an Error, and nobody reads where in the parser it was made. */
function withoutTraces<T>(work: () => T): T {
    const limit = Error.stackTraceLimit;
    Error.stackTraceLimit = 0;
    try {
        return work();
    } finally {
        Error.stackTraceLimit = limit;
    }
}

function recoverByLine(engine: Engine): void {
    const walk = engine.getNextPossibleTokenTypes.bind(engine);
    const known = new Map<string, TokenType[]>();
    engine.getNextPossibleTokenTypes = (path) => {
        const key = [...path.ruleStack, ...path.occurrenceStack, path.lastTok.name, path.lastTokOccurrence].join(' ');
        let found = known.get(key);
        if (found === undefined) {
            found = walk(path);
            known.set(key, found);
        }
        return found;
    };
    const consume = engine.consumeInternal.bind(engine);
    engine.consumeInternal = (expected, occurrence, options) => {
        if (expected.name === 'ID') {
            const here = engine.LA(1);
            // A name is missing where a word stands behind which the line could not go on, were it the name.
            const fits = () => isOneOf(engine.LA(2), engine.getFollowsForInRuleRecovery(expected, occurrence));
            if (canBeName(here) && !fits()) setType(here, wordType(here));
        }
        return consume(expected, occurrence, options);
    };
    engine.tryInRuleRecovery = (expected, follows) => {
        const mend = mendingOf(engine, expected, follows);
        if (mend === undefined) throw unmendable();
        if (mend === 'insert') return engine.getTokenToInsert(expected);
        if (mend === 'drop') engine.SKIP_TOKEN();
        if (mend === 'go on at brace') skip(engine, distanceToBrace(engine) - 1);
        const taken = engine.LA(1);
        engine.consumeToken();
        return taken;
    };
    engine.canPerformInRuleRecovery = (expected, follows) => mendingOf(engine, expected, follows) !== undefined;
    engine.findReSyncTokenType = () => engine.LA(distanceToGoOn(engine)).tokenType;
    engine.reSyncTo = () => skip(engine, distanceToGoOn(engine) - 1);
    engine.tryInRepetitionRecovery = (loop, args, starts, expected) => goOnInBlock(engine, loop, args, starts, expected);
}

type Mending = 'insert' | 'drop' | 'go on at brace';

/**
 * What can be mended by one made-up or dropped token: a word missing, a word too many. In the head of a block all that stands before its brace is passed over, so that its lines are kept.
 */
function mendingOf(engine: Engine, expected: TokenType, follows: readonly TokenType[]): Mending | undefined {
    const isBrace = expected.name === '{' || expected.name === '}';
    const [here, next] = [engine.LA(1), engine.LA(2)];
    const goesOn = (token: Token) => isOneOf(token, follows);
    const onThisLine = !startsStatement(here) && !isMadeUp(here) && here.image !== '{' && here.image !== '}';
    const droppable = onThisLine && isOneOf(next, [expected]) && !startsStatement(next);
    if (droppable && (isWordType(expected) || isBrace) && !isWord(here)) return 'drop';
    if (expected.name === '{' && onThisLine && distanceToBrace(engine) > 0) return 'go on at brace';
    if (!isBrace && goesOn(here)) return 'insert';
    return droppable ? 'drop' : undefined;
}

/** Whether a token is of one of these kinds; a word that can be a name is of two. */
function isOneOf({ tokenType }: Token, types: readonly TokenType[]): boolean {
    const { CATEGORIES = [] } = tokenType;
    const kinds = [tokenType, ...CATEGORIES];
    return types.some(({ name }) => kinds.some((kind) => kind.name === name));
}

function setType(token: Token, type: TokenType): void {
    token.tokenType = type;
    token.tokenTypeIdx = type.tokenTypeIdx ?? -1;
}

/** How many tokens ahead the brace is that opens the block whose head is being read; 0 where the line ends before it. */
function distanceToBrace(engine: Engine): number {
    for (let ahead = 1; ; ahead++) {
        const token = engine.LA(ahead);
        if (token.tokenType.name === '{') return ahead;
        if (token.tokenType.name === '}' || token.tokenType.name === 'EOF' || startsStatement(token)) return 0;
    }
}

function isWordType(type: TokenType): boolean {
    return /^[a-z]/.test(type.name);
}

/** How many tokens ahead the innermost block can go on: at one of its lines, or at its end. */
function distanceToGoOn(engine: Engine): number {
    const wanted = followsInBlock(engine);
    let depth = 0;
    for (let ahead = 1; ; ahead++) {
        const token = engine.LA(ahead);
        const name = token.tokenType.name;
        if (name === 'EOF') return ahead;
        const place = name === '}' || startsStatement(token);
        if (depth === 0 && place && wanted.has(token.tokenTypeIdx)) return ahead;
        depth = Math.max(0, depth + stepOf(name));
    }
}

/** What may come after the rules that are open, out to the block that holds them and no further. */
function followsInBlock(engine: Engine): Set<number | undefined> {
    const wanted = new Set<number | undefined>();
    for (const key of engine.buildFullFollowKeyStack().reverse()) {
        const follows = engine.getFollowSetFromFollowKey(key);
        for (const { tokenTypeIdx } of follows) wanted.add(tokenTypeIdx);
        if (follows.some(({ name }) => name === '}' || name === 'EOF')) break;
    }
    return wanted;
}

function stepOf(name: string): number {
    if (name === '{') return 1;
    return name === '}' ? -1 : 0;
}

function skip(engine: Engine, count: number): Token[] {
    const skipped: Token[] = [];
    for (let left = count; left > 0; left--) {
        skipped.push(engine.LA(1));
        engine.SKIP_TOKEN();
    }
    return skipped;
}

/** Skips a line that the block cannot take, with the block that may hang on it, and reads on behind it. */
function goOnInBlock(engine: Engine, loop: Loop, args: unknown[], starts: () => boolean, expected: TokenType): void {
    if (engine._errors.length >= mostErrors) {
        engine.moveToTerminatedState();
        return;
    }
    const before = engine.exportLexerState();
    for (let depth = 0; ; ) {
        const token = engine.LA(1);
        const name = token.tokenType.name;
        const ends = depth === 0 && token.tokenTypeIdx === expected.tokenTypeIdx;
        const goesOn = depth === 0 && startsStatement(token) && starts.call(engine);
        if (ends || goesOn) {
            if (goesOn) loop.apply(engine, args);
            return;
        }
        if (name === 'EOF') break;
        const passed = engine.exportLexerState();
        // A block whose brace stands on a line of its own is passed over with its head.
        const isBlock = name === '{' && passed !== before;
        if (passed === before || (depth === 0 && startsStatement(token) && !isBlock)) saveError(engine, expected);
        depth = Math.max(0, depth + stepOf(name));
        engine.SKIP_TOKEN();
    }
    engine.importLexerState(before);
}

function saveError(engine: Engine, expected: TokenType): void {
    if (engine._errors.length >= mostErrors) return;
    try {
        engine.consumeInternalError(expected, engine.LA(1));
    } catch {
        // Saved, and that is all: the parser goes on.
    }
}

function unmendable(): Error {
    return Object.assign(new Error('one token does not mend it'), { name: 'InRuleRecoveryException' });
}
