import { mkdir, readdir } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { Command } from 'commander';
import { leave } from './command-line.ts';
import { pagePictures } from './pictures/page-pictures.ts';
import { partPictures } from './pictures/part-pictures.ts';
import { withBrowser } from './pictures/with-browser.ts';

const program = new Command('pictures')
  .description('Pictures of a review’s pages, for a person to look at: every page wide, narrow, dark and as printed.')
  .argument('<review-folder>', 'folder with index.html')
  .argument('<out>', 'folder for the pictures; made where it is not there')
  .option('--readme', 'the few parts that README shows instead')
  .addHelpText(
    'after',
    `
Needs a Chromium at /usr/bin/chromium or CHROMIUM_PATH. Exit status: 0 done; 1 no review there; 2 wrong command line.

Example: npm run pictures -- data-samples/sorrel-fork/review .ci/output/pictures`,
  )
  .exitOverride(leave)
  .parse();

const [review, out] = program.args.map((path) => resolve(path));
const files = await readdir(review).catch(() => null);
if (files === null || !files.includes('index.html')) {
  process.stderr.write(`${review} holds no index.html: make the review first, npm run review -- <season>\n`);
  process.exit(1);
}
await mkdir(out, { recursive: true });
const pages = files.filter((name) => name.endsWith('.html')).map((name) => join(review, name));
const made = await withBrowser((browser) =>
  program.opts<{ readme?: true }>().readme === true
    ? partPictures(browser, review, out)
    : pagePictures(browser, pages, out),
);
process.stdout.write(`${made} pictures in ${out}\n`);
