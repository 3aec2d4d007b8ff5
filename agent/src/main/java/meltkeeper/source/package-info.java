/**
 * Where bytes come from: each source hands over what it {@link meltkeeper.protocol.Received
 * received}, and knows no dialect. One edge each stands in the rooms below.
 */
@NullMarked
package meltkeeper.source;

import org.jspecify.annotations.NullMarked;
