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
)
