/** For every figure of this group: an overloaded wire burns. */
export const electricalCaution =
  'A planning figure: an overloaded wire burns. The data sheets of cable, fuse and load govern, and local rules; leave what you are not sure of to a qualified electrician.';
