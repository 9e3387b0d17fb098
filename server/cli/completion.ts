import { nearest } from '../../shared/recipe/nearest';
import { say } from './say';
import { completionScript, shells } from './usage/completion-script';
import { readArgs } from './usage/read-args';
import { completionUsage, usages } from './usage/usages';
import { UsageError } from './usage-error';

/** `kerfbook completion`: a script for a shell, on standard output. */
export async function completion(args: string[]): Promise<number> {
    const [asked] = readArgs(completionUsage, args).positionals;
    const shell = shells.find((each) => each === asked);
    if (shell === undefined) {
        const near = asked === undefined ? undefined : nearest(asked, shells);
        throw new UsageError(`Say for which shell: ${shells.join(', ')}.${near === undefined ? '' : ` Do you mean ${near}?`}`);
    }
    say(completionScript(shell, usages));
    return 0;
}
