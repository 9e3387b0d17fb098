import type { Connection, WorkDoneProgressServerReporter } from 'vscode-languageserver';
import { refused } from './protocol/refused';
import type { JobWatcher, WatchedJob } from './worker/job-watcher';

/** Jobs quicker than this are not worth a word, ms. */
const patience = 1000;

/** The stages of a plan that can take long, as a maker would say them. */
const words: Readonly<Record<string, string>> = {
    art: 'reading the art',
    painted: 'laying the art down',
    placed: 'laying the art on the blank',
    boundary: 'turning the art inside out',
    inverse: 'turning the art inside out',
    grown: 'moving the edges',
    united: 'laying the art on the blank',
    dots: 'turning greys into dots',
    hatch: 'laying out scan lines',
    'dotted-lines': 'laying out scan lines',
    outline: 'following outlines',
    'machine-time': 'working out the machine’s time',
    picture: 'drawing the piece',
    fixes: 'trying fixes out',
};

/** Shows long work of the engine in the editor, with its stage, and lets it be cancelled there. */
export class ShownProgress implements JobWatcher {
    /** Set once the client has said that it can show it. */
    able = false;

    constructor(private readonly connection: Connection) {}

    begun(title: string, cancel: () => void): WatchedJob {
        let reporter: WorkDoneProgressServerReporter | undefined;
        let over = false;
        let stage: string | undefined;
        const timer = setTimeout(() => {
            if (!this.able) return;
            void this.connection.window.createWorkDoneProgress().then((made) => {
                if (over) return;
                reporter = made;
                made.begin(title, undefined, stage, true);
                made.token.onCancellationRequested(cancel);
            }, refused);
        }, patience);
        return {
            stage: (name) => {
                if (words[name] === undefined || words[name] === stage) return;
                stage = words[name];
                reporter?.report(stage);
            },
            ended: () => {
                over = true;
                clearTimeout(timer);
                reporter?.done();
            },
        };
    }
}
