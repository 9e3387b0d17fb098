// What is learnt from an art file without drawing it. The readers of XML behind it are as long as the rest of a language feature, and
// most sessions never ask: import it with `import()` only, so that the server's bundle leaves it to a file of its own.
export { artNames } from '../../shared/art/art-names';
export { artSize } from '../../shared/art/art-size';
