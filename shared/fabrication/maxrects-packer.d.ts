/** The package's ES module build, which its own type declarations do not name. */
declare module 'maxrects-packer/dist/maxrects-packer.mjs' {
  export * from 'maxrects-packer/dist/index';
}
