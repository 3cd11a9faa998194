/** A thread that does what the title of the site says: nothing in here is reckoned. */

/** @param {{ input: { site: { title: string } } }} job */
export default async function work({ input }) {
  const [what, ms] = input.site.title.split(' ');
  if (what === 'exit') process.exit(3);
  if (what === 'throw') throw new Error('secret of the house');
  // The thread is kept busy, as by a computation: no message reaches it meanwhile.
  if (what === 'spin') for (const end = Date.now() + Number(ms); Date.now() < end; );
  if (what === 'exhaust') for (const heap = [[0]]; ; ) heap.push(new Array(1e5).fill(Math.random()));
  return { answer: JSON.stringify({ what }) };
}
