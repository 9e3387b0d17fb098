import { KerfGrammar } from '../generated/grammar';
import { readNameTakingWords } from './name-taking';

/** The words behind which a name can stand. Bundles hold the list itself: reading it off the grammar takes as long as reading the stock. */
export const nameTakingWords: readonly string[] = [...readNameTakingWords(KerfGrammar())];
