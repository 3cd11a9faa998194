/** The one function of semver that the check of engines calls. */
declare module 'semver' {
  const semver: { satisfies(version: string, range: string): boolean };
  export default semver;
}
