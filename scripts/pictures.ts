import { mkdir, readdir } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { Command } from 'commander';
import { EXIT, leave, tellError } from './command-line.ts';
import { findChromium, NO_CHROMIUM } from './pdf/find-chromium.ts';
import { withBrowser } from './pdf/with-browser.ts';
import { pagePictures } from './pictures/page-pictures.ts';
import { partPictures } from './pictures/part-pictures.ts';

const program = new Command('pictures')
  .description('Pictures of a review’s pages, for a person to look at: every page wide, narrow, dark and as printed.')
  .argument('<review-folder>', 'folder with index.html')
  .argument('<out>', 'folder for the pictures; made where it is not there')
  .option('--readme', 'the few parts that README shows instead')
  .addHelpText(
    'after',
    `
Needs an installed Chromium (CHROMIUM_PATH, then the usual places). Exit status: 0 done; 1 no review there, or no
Chromium; 2 wrong command line; 4 a fault of the kit.

Example: npm run pictures -- data-samples/sorrel-fork/review .ci/output/pictures`,
  )
  .exitOverride(leave)
  .parse();

const tell = (line: string) => process.stderr.write(`${line}\n`);
const [review, out] = program.args.map((path) => resolve(path));
process.exitCode = await main().catch((error: unknown) => tellError(error, tell));

async function main(): Promise<number> {
  const browserPath = findChromium(null);
  const files: string[] = await readdir(review).catch(() => []);
  const why = !files.includes('index.html')
    ? `${review} holds no index.html: make the review first, npm run review -- <season>`
    : browserPath === null
      ? NO_CHROMIUM
      : null;
  if (why !== null || browserPath === null) {
    tell(String(why));
    return EXIT.badInput;
  }
  await mkdir(out, { recursive: true });
  const pages = files.filter((name) => name.endsWith('.html')).map((name) => join(review, name));
  const { readme } = program.opts<{ readme?: true }>();
  const made = await withBrowser(browserPath, (browser) =>
    readme ? partPictures(browser, review, out) : pagePictures(browser, pages, out),
  );
  process.stdout.write(`${made} pictures in ${out}\n`);
  return EXIT.whole;
}
