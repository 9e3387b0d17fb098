/**
 * Every figure that stands on common practice and on no source, with its place: what a better source would replace first. Then how
 * many lines of the built-in stock are known how well.
 *
 *     npm run practice [WORD]
 *
 * In the sources they bear the tag @commonPractice; stock and the rules' pages, which makers read too, say it in words.
 */
import { countedKinds, stockLines } from '../language/stock-sources.ts';
import { practices } from '../tests/house/common-practice.ts';
import { sourceFiles, stockFiles } from '../tests/house/source-files.ts';

const word = process.argv[2]?.toLowerCase() ?? '';
const files = [...sourceFiles('shared', 'language', 'server', 'extension'), ...stockFiles()];
const found = practices(files).filter(({ place, text }) => `${place} ${text}`.toLowerCase().includes(word));
for (const { place, text } of found) console.log(`${place}  ${text}`);
console.log(`${found.length} of common practice, without a source.`);
const builtIn = stockFiles().filter(({ path }) => !path.startsWith('samples/'));
const graded = countedKinds(stockLines(builtIn)).map(([grade, count]) => `${count} ${grade}`);
console.log(`Built-in stock, lines by grade: ${graded.join(', ')}.`);
