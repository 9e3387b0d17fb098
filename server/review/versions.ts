import type { Message } from '../../shared/recipe/phrase';
import type { RevisionChoice, RevisionPlaces } from '../../shared/view/protocol';
import type { PastRecipe } from '../engine/jobs';
import type { OpenVersion } from './open-version';

/** Why there is no version to look into, in a maker's words. */
export interface NoVersion {
    readonly problem: Message;
    /** Asking again would be in vain. */
    readonly final?: true;
}

export interface OpenedFile {
    readonly version: OpenVersion;
    /** The file's name in that version. */
    readonly name: string;
}

/** What is known of an earlier version that is looked for. */
export interface WantedPast {
    /** The revision that it had. */
    readonly revision?: number;
    /** The newest version of this day or before is wanted, ISO 8601. */
    readonly day?: string;
    /** Where there is none of that day, the newest of all that had the revision will do. */
    readonly orNewest?: boolean;
}

/** Earlier versions of the workspace's files. An editor without Node has none. */
export interface Versions {
    /** A file as it was in a revision, followed to the name that it had then. */
    open(uri: string, revision: string): Promise<OpenedFile | NoVersion>;
    /**
     * A recipe of a file as it was for each of its runs, as far as that can be found: in their order.
     * @param tell hears the part of the commits that has been looked through, 0 to 1
     */
    past(
        uri: string,
        recipe: string,
        wanted: readonly WantedPast[],
        tell?: (part: number) => void,
    ): Promise<readonly (PastRecipe | undefined)[]>;
    /** Where it shows that a revision has come to mean another commit: of a new commit, of another branch that was checked out. */
    places(uri: string): Promise<RevisionPlaces | NoVersion>;
    /** Revisions to choose from: those that changed the file, then branches and tags. */
    choices(uri: string): Promise<readonly RevisionChoice[] | NoVersion>;
}
