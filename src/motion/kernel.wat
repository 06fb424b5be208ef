;; The loops of kernel.ts as machine code, four words (128 poses) at a time. Registers as described there; addresses are
;; bytes here. tests/house/assemble-kernel.ts turns this into kernel-bytes.ts; a test holds the two together.
(module
  (import "heap" "memory" (memory 1))

  ;; Shifts the words of one layer onto another.
  (func (export "shiftOver")
    (local $source i32) (local $target i32) (local $free i32) (local $last i32) (local $part i32) (local $back i32)
    (local $log i32) (local $fresh i32) (local $at i32) (local $wide v128)
    ;; $source is kept one word back, so that the word below the source is at offset 0 and the source at 4.
    (local.set $source (i32.sub (i32.shl (i32.load offset=0 (i32.const 0)) (i32.const 2)) (i32.const 4)))
    (local.set $target (i32.shl (i32.load offset=4 (i32.const 0)) (i32.const 2)))
    (local.set $free (i32.shl (i32.load offset=8 (i32.const 0)) (i32.const 2)))
    (local.set $last (i32.shl (i32.load offset=12 (i32.const 0)) (i32.const 2)))
    (local.set $part (i32.load offset=16 (i32.const 0)))
    (local.set $back (i32.sub (i32.const 31) (local.get $part)))
    (local.set $log (i32.shl (i32.load offset=20 (i32.const 0)) (i32.const 2)))
    (block $done
      (loop $next
        (block $narrow
          (loop $four
            (br_if $narrow (i32.gt_u (i32.add (local.get $target) (i32.const 12)) (local.get $last)))
            (local.set $wide
              (v128.andnot
                (v128.and
                  (v128.or
                    (i32x4.shl (v128.load offset=4 align=4 (local.get $source)) (local.get $part))
                    (i32x4.shr_u (i32x4.shr_u (v128.load align=4 (local.get $source)) (i32.const 1)) (local.get $back)))
                  (v128.load align=4 (local.get $free)))
                (v128.load align=4 (local.get $target))))
            (if (v128.any_true (local.get $wide)) (then
              (v128.store align=4 (local.get $target) (v128.or (v128.load align=4 (local.get $target)) (local.get $wide)))
              (local.set $at (i32.shr_u (local.get $target) (i32.const 2)))
              (i32.store (local.get $log) (local.get $at))
              (i32.store offset=4 (local.get $log) (local.tee $fresh (i32x4.extract_lane 0 (local.get $wide))))
              (local.set $log (i32.add (local.get $log) (i32.shl (i32.ne (local.get $fresh) (i32.const 0)) (i32.const 3))))
              (i32.store (local.get $log) (i32.add (local.get $at) (i32.const 1)))
              (i32.store offset=4 (local.get $log) (local.tee $fresh (i32x4.extract_lane 1 (local.get $wide))))
              (local.set $log (i32.add (local.get $log) (i32.shl (i32.ne (local.get $fresh) (i32.const 0)) (i32.const 3))))
              (i32.store (local.get $log) (i32.add (local.get $at) (i32.const 2)))
              (i32.store offset=4 (local.get $log) (local.tee $fresh (i32x4.extract_lane 2 (local.get $wide))))
              (local.set $log (i32.add (local.get $log) (i32.shl (i32.ne (local.get $fresh) (i32.const 0)) (i32.const 3))))
              (i32.store (local.get $log) (i32.add (local.get $at) (i32.const 3)))
              (i32.store offset=4 (local.get $log) (local.tee $fresh (i32x4.extract_lane 3 (local.get $wide))))
              (local.set $log (i32.add (local.get $log) (i32.shl (i32.ne (local.get $fresh) (i32.const 0)) (i32.const 3))))
            ))
            (local.set $target (i32.add (local.get $target) (i32.const 16)))
            (local.set $source (i32.add (local.get $source) (i32.const 16)))
            (local.set $free (i32.add (local.get $free) (i32.const 16)))
            (br $four)))
        ;; Fewer than four are left.
        (br_if $done (i32.gt_u (local.get $target) (local.get $last)))
        (local.set $fresh
              (i32.and
                (i32.and
                  (i32.or
                    (i32.shl (i32.load offset=4 (local.get $source)) (local.get $part))
                    (i32.shr_u (i32.shr_u (i32.load (local.get $source)) (i32.const 1)) (local.get $back)))
                  (i32.load (local.get $free)))
                (i32.xor (i32.load (local.get $target)) (i32.const -1))))
        (if (local.get $fresh) (then
          (i32.store (local.get $target) (i32.or (i32.load (local.get $target)) (local.get $fresh)))
          (i32.store (local.get $log) (i32.shr_u (local.get $target) (i32.const 2)))
          (i32.store offset=4 (local.get $log) (local.get $fresh))
          (local.set $log (i32.add (local.get $log) (i32.const 8)))))
        (local.set $target (i32.add (local.get $target) (i32.const 4)))
        (local.set $source (i32.add (local.get $source) (i32.const 4)))
        (local.set $free (i32.add (local.get $free) (i32.const 4)))
        (br $next)))
    (i32.store offset=20 (i32.const 0) (i32.shr_u (local.get $log) (i32.const 2)))
  )

  ;; Runs along one layer in place, upwards. By four or more words at a time no word of a block feeds another of it.
  (func (export "runUp")
    (local $source i32) (local $target i32) (local $free i32) (local $last i32) (local $part i32) (local $back i32)
    (local $log i32) (local $fresh i32) (local $at i32) (local $wide v128)
    (local $limit i32) (local $reach i32) (local $all i32)
    ;; $source is kept one word back, so that the word below the source is at offset 0 and the source at 4.
    (local.set $source (i32.sub (i32.shl (i32.load offset=0 (i32.const 0)) (i32.const 2)) (i32.const 4)))
    (local.set $target (i32.shl (i32.load offset=4 (i32.const 0)) (i32.const 2)))
    (local.set $free (i32.shl (i32.load offset=8 (i32.const 0)) (i32.const 2)))
    (local.set $last (i32.shl (i32.load offset=12 (i32.const 0)) (i32.const 2)))
    (local.set $part (i32.load offset=16 (i32.const 0)))
    (local.set $back (i32.sub (i32.const 31) (local.get $part)))
    (local.set $log (i32.shl (i32.load offset=20 (i32.const 0)) (i32.const 2)))
    (local.set $limit (i32.shl (i32.load offset=24 (i32.const 0)) (i32.const 2)))
    (local.set $reach (i32.shl (i32.load offset=28 (i32.const 0)) (i32.const 2)))
    (block $done
      (loop $next
        (block $narrow
          (br_if $narrow (i32.eqz (i32.ge_s (local.get $reach) (i32.const 20))))
          (loop $four
            (br_if $narrow (i32.gt_u (i32.add (local.get $target) (i32.const 12)) (local.get $last)))
            (local.set $wide
              (v128.andnot
                (v128.and
                  (v128.or
                    (i32x4.shl (v128.load offset=4 align=4 (local.get $source)) (local.get $part))
                    (i32x4.shr_u (i32x4.shr_u (v128.load align=4 (local.get $source)) (i32.const 1)) (local.get $back)))
                  (v128.load align=4 (local.get $free)))
                (v128.load align=4 (local.get $target))))
            (if (v128.any_true (local.get $wide)) (then
              (v128.store align=4 (local.get $target) (v128.or (v128.load align=4 (local.get $target)) (local.get $wide)))
              (local.set $at (i32.shr_u (local.get $target) (i32.const 2)))
              (i32.store (local.get $log) (local.get $at))
              (i32.store offset=4 (local.get $log) (local.tee $fresh (i32x4.extract_lane 0 (local.get $wide))))
              (local.set $log (i32.add (local.get $log) (i32.shl (i32.ne (local.get $fresh) (i32.const 0)) (i32.const 3))))
              (i32.store (local.get $log) (i32.add (local.get $at) (i32.const 1)))
              (i32.store offset=4 (local.get $log) (local.tee $fresh (i32x4.extract_lane 1 (local.get $wide))))
              (local.set $log (i32.add (local.get $log) (i32.shl (i32.ne (local.get $fresh) (i32.const 0)) (i32.const 3))))
              (i32.store (local.get $log) (i32.add (local.get $at) (i32.const 2)))
              (i32.store offset=4 (local.get $log) (local.tee $fresh (i32x4.extract_lane 2 (local.get $wide))))
              (local.set $log (i32.add (local.get $log) (i32.shl (i32.ne (local.get $fresh) (i32.const 0)) (i32.const 3))))
              (i32.store (local.get $log) (i32.add (local.get $at) (i32.const 3)))
              (i32.store offset=4 (local.get $log) (local.tee $fresh (i32x4.extract_lane 3 (local.get $wide))))
              (local.set $log (i32.add (local.get $log) (i32.shl (i32.ne (local.get $fresh) (i32.const 0)) (i32.const 3))))
              ;; The last entry of the log is the word farthest on.
              (local.set $at (i32.add (i32.shl (i32.load (i32.sub (local.get $log) (i32.const 8))) (i32.const 2)) (local.get $reach)))
              (if (i32.gt_u (local.get $at) (local.get $last)) (then
                (local.set $last (select (local.get $at) (local.get $limit) (i32.lt_u (local.get $at) (local.get $limit))))))
            ))
            (local.set $target (i32.add (local.get $target) (i32.const 16)))
            (local.set $source (i32.add (local.get $source) (i32.const 16)))
            (local.set $free (i32.add (local.get $free) (i32.const 16)))
            (br $four)))
        (br_if $done (i32.gt_u (local.get $target) (local.get $last)))
        (local.set $all (i32.const 0))
        (block $dry
          (loop $again
            (local.set $fresh
              (i32.and
                (i32.and
                  (i32.or
                    (i32.shl (i32.load offset=4 (local.get $source)) (local.get $part))
                    (i32.shr_u (i32.shr_u (i32.load (local.get $source)) (i32.const 1)) (local.get $back)))
                  (i32.load (local.get $free)))
                (i32.xor (i32.load (local.get $target)) (i32.const -1))))
            (br_if $dry (i32.eqz (local.get $fresh)))
            (i32.store (local.get $target) (i32.or (i32.load (local.get $target)) (local.get $fresh)))
            (local.set $all (i32.or (local.get $all) (local.get $fresh)))
            (br $again)))
        (if (local.get $all) (then
          (i32.store (local.get $log) (i32.shr_u (local.get $target) (i32.const 2)))
          (i32.store offset=4 (local.get $log) (local.get $all))
          (local.set $log (i32.add (local.get $log) (i32.const 8)))
          (local.set $at (i32.add (local.get $target) (local.get $reach)))
          (if (i32.gt_u (local.get $at) (local.get $last)) (then
            (local.set $last (select (local.get $at) (local.get $limit) (i32.lt_u (local.get $at) (local.get $limit))))))
        ))
        (local.set $target (i32.add (local.get $target) (i32.const 4)))
        (local.set $source (i32.add (local.get $source) (i32.const 4)))
        (local.set $free (i32.add (local.get $free) (i32.const 4)))
        (br $next)))
    (i32.store offset=20 (i32.const 0) (i32.shr_u (local.get $log) (i32.const 2)))
  )

  ;; Runs along one layer in place, downwards. By four or more words at a time no word of a block feeds another of it.
  (func (export "runDown")
    (local $source i32) (local $target i32) (local $free i32) (local $last i32) (local $part i32) (local $back i32)
    (local $log i32) (local $fresh i32) (local $at i32) (local $wide v128)
    (local $limit i32) (local $reach i32) (local $all i32)
    ;; $source is kept one word back, so that the word below the source is at offset 0 and the source at 4.
    (local.set $source (i32.sub (i32.shl (i32.load offset=0 (i32.const 0)) (i32.const 2)) (i32.const 4)))
    (local.set $target (i32.shl (i32.load offset=4 (i32.const 0)) (i32.const 2)))
    (local.set $free (i32.shl (i32.load offset=8 (i32.const 0)) (i32.const 2)))
    (local.set $last (i32.shl (i32.load offset=12 (i32.const 0)) (i32.const 2)))
    (local.set $part (i32.load offset=16 (i32.const 0)))
    (local.set $back (i32.sub (i32.const 31) (local.get $part)))
    (local.set $log (i32.shl (i32.load offset=20 (i32.const 0)) (i32.const 2)))
    (local.set $limit (i32.shl (i32.load offset=24 (i32.const 0)) (i32.const 2)))
    (local.set $reach (i32.shl (i32.load offset=28 (i32.const 0)) (i32.const 2)))
    (block $done
      (loop $next
        (block $narrow
          (br_if $narrow (i32.eqz (i32.le_s (local.get $reach) (i32.const -20))))
          (loop $four
            (br_if $narrow (i32.lt_u (i32.sub (local.get $target) (i32.const 12)) (local.get $last)))
            (local.set $wide
              (v128.andnot
                (v128.and
                  (v128.or
                    (i32x4.shl (v128.load offset=4 align=4 (i32.sub (local.get $source) (i32.const 12))) (local.get $part))
                    (i32x4.shr_u (i32x4.shr_u (v128.load align=4 (i32.sub (local.get $source) (i32.const 12))) (i32.const 1)) (local.get $back)))
                  (v128.load align=4 (i32.sub (local.get $free) (i32.const 12))))
                (v128.load align=4 (i32.sub (local.get $target) (i32.const 12)))))
            (if (v128.any_true (local.get $wide)) (then
              (v128.store align=4 (i32.sub (local.get $target) (i32.const 12)) (v128.or (v128.load align=4 (i32.sub (local.get $target) (i32.const 12))) (local.get $wide)))
              (local.set $at (i32.shr_u (i32.sub (local.get $target) (i32.const 12)) (i32.const 2)))
              (i32.store (local.get $log) (i32.add (local.get $at) (i32.const 3)))
              (i32.store offset=4 (local.get $log) (local.tee $fresh (i32x4.extract_lane 3 (local.get $wide))))
              (local.set $log (i32.add (local.get $log) (i32.shl (i32.ne (local.get $fresh) (i32.const 0)) (i32.const 3))))
              (i32.store (local.get $log) (i32.add (local.get $at) (i32.const 2)))
              (i32.store offset=4 (local.get $log) (local.tee $fresh (i32x4.extract_lane 2 (local.get $wide))))
              (local.set $log (i32.add (local.get $log) (i32.shl (i32.ne (local.get $fresh) (i32.const 0)) (i32.const 3))))
              (i32.store (local.get $log) (i32.add (local.get $at) (i32.const 1)))
              (i32.store offset=4 (local.get $log) (local.tee $fresh (i32x4.extract_lane 1 (local.get $wide))))
              (local.set $log (i32.add (local.get $log) (i32.shl (i32.ne (local.get $fresh) (i32.const 0)) (i32.const 3))))
              (i32.store (local.get $log) (local.get $at))
              (i32.store offset=4 (local.get $log) (local.tee $fresh (i32x4.extract_lane 0 (local.get $wide))))
              (local.set $log (i32.add (local.get $log) (i32.shl (i32.ne (local.get $fresh) (i32.const 0)) (i32.const 3))))
              ;; The last entry of the log is the word farthest on.
              (local.set $at (i32.add (i32.shl (i32.load (i32.sub (local.get $log) (i32.const 8))) (i32.const 2)) (local.get $reach)))
              (if (i32.lt_u (local.get $at) (local.get $last)) (then
                (local.set $last (select (local.get $at) (local.get $limit) (i32.gt_u (local.get $at) (local.get $limit))))))
            ))
            (local.set $target (i32.sub (local.get $target) (i32.const 16)))
            (local.set $source (i32.sub (local.get $source) (i32.const 16)))
            (local.set $free (i32.sub (local.get $free) (i32.const 16)))
            (br $four)))
        (br_if $done (i32.lt_u (local.get $target) (local.get $last)))
        (local.set $all (i32.const 0))
        (block $dry
          (loop $again
            (local.set $fresh
              (i32.and
                (i32.and
                  (i32.or
                    (i32.shl (i32.load offset=4 (local.get $source)) (local.get $part))
                    (i32.shr_u (i32.shr_u (i32.load (local.get $source)) (i32.const 1)) (local.get $back)))
                  (i32.load (local.get $free)))
                (i32.xor (i32.load (local.get $target)) (i32.const -1))))
            (br_if $dry (i32.eqz (local.get $fresh)))
            (i32.store (local.get $target) (i32.or (i32.load (local.get $target)) (local.get $fresh)))
            (local.set $all (i32.or (local.get $all) (local.get $fresh)))
            (br $again)))
        (if (local.get $all) (then
          (i32.store (local.get $log) (i32.shr_u (local.get $target) (i32.const 2)))
          (i32.store offset=4 (local.get $log) (local.get $all))
          (local.set $log (i32.add (local.get $log) (i32.const 8)))
          (local.set $at (i32.add (local.get $target) (local.get $reach)))
          (if (i32.lt_u (local.get $at) (local.get $last)) (then
            (local.set $last (select (local.get $at) (local.get $limit) (i32.gt_u (local.get $at) (local.get $limit))))))
        ))
        (local.set $target (i32.sub (local.get $target) (i32.const 4)))
        (local.set $source (i32.sub (local.get $source) (i32.const 4)))
        (local.set $free (i32.sub (local.get $free) (i32.const 4)))
        (br $next)))
    (i32.store offset=20 (i32.const 0) (i32.shr_u (local.get $log) (i32.const 2)))
  )

  ;; Whether the words from $source to $last have a bit in common with those from $target.
  (func (export "meet")
    (local $source i32) (local $target i32) (local $last i32) (local $met i32)
    (local.set $source (i32.shl (i32.load offset=0 (i32.const 0)) (i32.const 2)))
    (local.set $target (i32.shl (i32.load offset=4 (i32.const 0)) (i32.const 2)))
    (local.set $last (i32.shl (i32.load offset=12 (i32.const 0)) (i32.const 2)))
    (block $done
      (block $narrow
        (loop $four
          (br_if $narrow (i32.gt_u (i32.add (local.get $source) (i32.const 12)) (local.get $last)))
          (if (v128.any_true (v128.and (v128.load align=4 (local.get $source)) (v128.load align=4 (local.get $target)))) (then
            (local.set $met (i32.const 1))
            (br $done)))
          (local.set $source (i32.add (local.get $source) (i32.const 16)))
          (local.set $target (i32.add (local.get $target) (i32.const 16)))
          (br $four)))
      (loop $one
        (br_if $done (i32.gt_u (local.get $source) (local.get $last)))
        (if (i32.and (i32.load (local.get $source)) (i32.load (local.get $target))) (then
          (local.set $met (i32.const 1))
          (br $done)))
        (local.set $source (i32.add (local.get $source) (i32.const 4)))
        (local.set $target (i32.add (local.get $target) (i32.const 4)))
        (br $one)))
    (i32.store offset=32 (i32.const 0) (local.get $met))
  )

  ;; Clears bits between the two sides of a hexagon, row by row.
  (func (export "clearRows")
    (local $base i32) (local $stride i32) (local $row i32) (local $lastRow i32) (local $lastColumn i32)
    (local $from i32) (local $to i32) (local $at i32) (local $end i32) (local $head i32) (local $tail i32)
    (local $left f64) (local $leftSlope f64) (local $right f64) (local $rightSlope f64)
    (local.set $base (i32.shl (i32.load offset=36 (i32.const 0)) (i32.const 2)))
    (local.set $stride (i32.load offset=40 (i32.const 0)))
    (local.set $row (i32.load offset=44 (i32.const 0)))
    (local.set $lastRow (i32.load offset=48 (i32.const 0)))
    (local.set $lastColumn (i32.load offset=52 (i32.const 0)))
    (local.set $left (f64.load offset=64 (i32.const 0)))
    (local.set $leftSlope (f64.load offset=72 (i32.const 0)))
    (local.set $right (f64.load offset=80 (i32.const 0)))
    (local.set $rightSlope (f64.load offset=88 (i32.const 0)))
    (block $done
      (loop $next
        (br_if $done (i32.gt_s (local.get $row) (local.get $lastRow)))
        (local.set $from (i32.trunc_sat_f64_s (f64.ceil (local.get $left))))
        (local.set $from (select (local.get $from) (i32.const 0) (i32.gt_s (local.get $from) (i32.const 0))))
        (local.set $to (i32.trunc_sat_f64_s (f64.floor (local.get $right))))
        (local.set $to (select (local.get $to) (local.get $lastColumn) (i32.lt_s (local.get $to) (local.get $lastColumn))))
        (if (i32.le_s (local.get $from) (local.get $to)) (then
          (local.set $at (i32.mul (local.get $row) (local.get $stride)))
          (local.set $from (i32.add (local.get $from) (local.get $at)))
          (local.set $to (i32.add (local.get $to) (local.get $at)))
          (local.set $at (i32.add (local.get $base) (i32.shl (i32.shr_s (local.get $from) (i32.const 5)) (i32.const 2))))
          (local.set $end (i32.add (local.get $base) (i32.shl (i32.shr_s (local.get $to) (i32.const 5)) (i32.const 2))))
          ;; What stays of the first word and of the last.
          (local.set $head
            (i32.xor (i32.shl (i32.const -1) (i32.and (local.get $from) (i32.const 31))) (i32.const -1)))
          (local.set $tail
            (i32.xor (i32.shr_u (i32.const -1) (i32.sub (i32.const 31) (i32.and (local.get $to) (i32.const 31)))) (i32.const -1)))
          (if (i32.eq (local.get $at) (local.get $end)) (then
            (local.set $head (i32.or (local.get $head) (local.get $tail)))))
          (i32.store (local.get $at) (i32.and (i32.load (local.get $at)) (local.get $head)))
          (block $filled
            (loop $fill
              (local.set $at (i32.add (local.get $at) (i32.const 4)))
              (br_if $filled (i32.ge_u (local.get $at) (local.get $end)))
              (i32.store (local.get $at) (i32.const 0))
              (br $fill)))
          (if (i32.eq (local.get $at) (local.get $end)) (then
            (i32.store (local.get $at) (i32.and (i32.load (local.get $at)) (local.get $tail)))))
        ))
        (local.set $left (f64.add (local.get $left) (local.get $leftSlope)))
        (local.set $right (f64.add (local.get $right) (local.get $rightSlope)))
        (local.set $row (i32.add (local.get $row) (i32.const 1)))
        (br $next)))
  )

  ;; Clears the bits of a layer that are set in another, shifted down.
  (func (export "clearShifted")
    (local $source i32) (local $target i32) (local $last i32) (local $part i32) (local $back i32)
    (local.set $source (i32.shl (i32.load offset=0 (i32.const 0)) (i32.const 2)))
    (local.set $target (i32.shl (i32.load offset=4 (i32.const 0)) (i32.const 2)))
    (local.set $last (i32.shl (i32.load offset=12 (i32.const 0)) (i32.const 2)))
    (local.set $part (i32.load offset=16 (i32.const 0)))
    (local.set $back (i32.sub (i32.const 31) (local.get $part)))
    (block $done
      (loop $next
        (block $narrow
          (loop $four
            (br_if $narrow (i32.gt_u (i32.add (local.get $target) (i32.const 12)) (local.get $last)))
            (v128.store align=4 (local.get $target)
              (v128.andnot
                (v128.load align=4 (local.get $target))
                (v128.or
                  (i32x4.shr_u (v128.load align=4 (local.get $source)) (local.get $part))
                  (i32x4.shl (i32x4.shl (v128.load offset=4 align=4 (local.get $source)) (i32.const 1)) (local.get $back)))))
            (local.set $source (i32.add (local.get $source) (i32.const 16)))
            (local.set $target (i32.add (local.get $target) (i32.const 16)))
            (br $four)))
        (br_if $done (i32.gt_u (local.get $target) (local.get $last)))
        (i32.store (local.get $target)
          (i32.and
            (i32.load (local.get $target))
            (i32.xor
              (i32.or
                (i32.shr_u (i32.load (local.get $source)) (local.get $part))
                (i32.shl (i32.shl (i32.load offset=4 (local.get $source)) (i32.const 1)) (local.get $back)))
              (i32.const -1))))
        (local.set $source (i32.add (local.get $source) (i32.const 4)))
        (local.set $target (i32.add (local.get $target) (i32.const 4)))
        (br $next)))
  )
)
