import { AbstractParserErrorMessageProvider } from 'langium';

type Mismatch = Parameters<AbstractParserErrorMessageProvider['buildMismatchTokenMessage']>[0];
type NoAlternative = Parameters<AbstractParserErrorMessageProvider['buildNoViableAltMessage']>[0];
type TooFew = Parameters<AbstractParserErrorMessageProvider['buildEarlyExitMessage']>[0];

const separator = '\n';

/**
 * Puts into each error what could have stood there, by name. A maker never reads this: the words are
 * found in findings/syntax.ts, which also knows the line and the block.
 */
export class KerfErrorNames extends AbstractParserErrorMessageProvider {
    override buildMismatchTokenMessage({ expected }: Mismatch): string {
        return expected.name;
    }

    override buildNoViableAltMessage({ expectedPathsPerAlt }: NoAlternative): string {
        return join(expectedPathsPerAlt.flatMap((paths) => paths.map((path) => path[0]?.name)));
    }

    override buildEarlyExitMessage({ expectedIterationPaths }: TooFew): string {
        return join(expectedIterationPaths.map((path) => path[0]?.name));
    }

    override buildNotAllInputParsedMessage(): string {
        return 'EOF';
    }
}

function join(names: readonly (string | undefined)[]): string {
    return [...new Set(names.filter((name) => name !== undefined))].join(separator);
}

/** The names that were put into an error's message. */
export function expectedNames(message: string): string[] {
    return message.split(separator).filter((name) => name !== '');
}
