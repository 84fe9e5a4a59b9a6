using ColonyLineage.Entries;

namespace ColonyLineage.Ledger.Import;

/// <summary>Refuses a sheet as soon as it turns out longer than the limit, and says how much of it has been read.</summary>
internal sealed class LimitedStream(Stream inner, long limit, IProgress<long>? progress) : Stream
{
    private long _read;

    public override bool CanRead => true;
    public override bool CanSeek => false;
    public override bool CanWrite => false;
    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => _read;
        set => throw new NotSupportedException();
    }

    /// <summary>Refuses at once where the stream knows its length.</summary>
    public static LimitedStream Over(Stream stream, long limit, IProgress<long>? progress)
    {
        if (stream.CanSeek && stream.Length - stream.Position > limit) throw TooLarge(limit);
        return new LimitedStream(stream, limit, progress);
    }

    public override int Read(byte[] buffer, int offset, int count) => Count(inner.Read(buffer, offset, count));

    public override int Read(Span<byte> buffer) => Count(inner.Read(buffer));

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();
    public override void SetLength(long value) => throw new NotSupportedException();
    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    private int Count(int bytes)
    {
        _read += bytes;
        if (_read > limit) throw TooLarge(limit);
        if (bytes > 0) progress?.Report(_read);
        return bytes;
    }

    private static RefusedException TooLarge(long limit) => new(new Refusal(
        ImportRefusals.SheetTooLarge, "", $"The sheet has more than {limit:N0} bytes. Split it into smaller sheets, or raise the limit."));
}
