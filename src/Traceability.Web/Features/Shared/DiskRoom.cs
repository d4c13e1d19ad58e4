namespace Traceability.Web.Features.Shared;

/// <summary>What is left on the disk of the data folder, in bytes.</summary>
public sealed record DiskRoom(long FreeBytes, long TotalBytes)
{
    /// <summary>Some thousand units with their recordings: a week to act in. Common practice, no source.</summary>
    private const long LeastBytes = 2L << 30;

    private const int LeastPercent = 5;

    /// <summary>True when somebody should make room now; the service itself stops recording far below.</summary>
    public bool IsLow => FreeBytes < LeastBytes || FreeBytes * 100 < TotalBytes * LeastPercent;

    /// <summary>Of the service's data folder.</summary>
    public static DiskRoom Of(IConfiguration configuration)
    {
        var disk = new DriveInfo(DataFolder.Of(configuration));
        return new(disk.AvailableFreeSpace, disk.TotalSize);
    }

    /// <summary>"812 MB", "3.4 GB".</summary>
    public static string Say(long bytes) =>
        bytes < 1L << 30
            ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{bytes / (double)(1L << 20):0} MB")
            : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{bytes / (double)(1L << 30):0.0} GB");
}
