/** What tests of several rooms share: real parts from outside, and honest fakes of our own. */
@NullMarked
package meltkeeper.testing;

import org.jspecify.annotations.NullMarked;
