/**
 * How to read what a printer publishes at a broker: which topics, where in the payload each value
 * stands, and what its numbers and words mean.
 *
 * <p>A {@link meltkeeper.protocol.mapping.Mapping} is plain data from the configuration. A {@link
 * meltkeeper.protocol.mapping.MappingDecoder} compiles the mappings of one broker and reads
 * messages in one pass, without building a tree.
 */
@NullMarked
package meltkeeper.protocol.mapping;

import org.jspecify.annotations.NullMarked;
